package varanid.intake.sample;

import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/** Finds what an organisation assumes. Works within the caller's transaction. */
@Component
class SamplingSettings {

    private final SamplingSettingRows rows;
    private final SamplingReference reference;
    private final JsonMapper json;

    SamplingSettings(SamplingSettingRows rows, SamplingReference reference, JsonMapper json) {
        this.rows = rows;
        this.reference = reference;
        this.json = json;
    }

    Assumptions get(UUID organisationId) {
        return of(rows.findLatest(organisationId));
    }

    Assumptions of(Optional<SamplingSettingRow> latest) {
        return latest.map(row -> Assumptions.of(reference.defaults(), figures(row), row.reason()))
                .orElseGet(() -> Assumptions.shipped(reference.defaults()));
    }

    OwnFigures figures(SamplingSettingRow row) {
        return json.readValue(row.figures(), OwnFigures.class);
    }

    String write(OwnFigures figures) {
        return json.writeValueAsString(figures);
    }
}
