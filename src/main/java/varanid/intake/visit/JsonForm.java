package varanid.intake.visit;

import java.net.URI;
import java.util.Optional;
import org.springframework.core.annotation.Order;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/** The summary as data: {@code shared/schemas/summary.schema.json} describes it. */
@Component
@Order(0)
class JsonForm implements SummaryForm {

    private final JsonMapper json;

    JsonForm(JsonMapper json) {
        this.json = json;
    }

    @Override
    public MediaType type() {
        return MediaType.APPLICATION_JSON;
    }

    @Override
    public byte[] write(Summary summary, Optional<URI> link) {
        return json.writeValueAsBytes(summary);
    }
}
