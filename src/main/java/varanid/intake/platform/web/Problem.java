package varanid.intake.platform.web;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import java.net.URI;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What every refusal looks like: RFC 9457, {@code application/problem+json}.
 *
 * @param type the kind, a relative reference
 * @param title the kind in words
 * @param status the HTTP status again
 * @param detail this case in words
 * @param instance the path that was asked for
 * @param faults everything wrong with the request, where the problem is one of content
 */
@Schema(name = "Problem", description = "RFC 9457 problem details, with every fault of a readable request")
@JsonInclude(JsonInclude.Include.NON_EMPTY)
public record Problem(
        @Schema(type = "string", format = "uri-reference", example = "/problems/invalid-request")
        URI type,

        String title,
        int status,
        @Nullable String detail,
        @Schema(format = "uri-reference") @Nullable String instance,
        List<Fault> faults) {

    public static final String MEDIA_TYPE = "application/problem+json";
}
