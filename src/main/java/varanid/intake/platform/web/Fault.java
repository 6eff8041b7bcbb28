package varanid.intake.platform.web;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.Comparator;
import org.jspecify.annotations.Nullable;

/**
 * One thing wrong with a request.
 *
 * @param pointer where in the body, as the URI fragment form of a JSON Pointer (RFC 6901 section 6); none for a fault
 *     outside the body
 * @param parameter which query parameter; none for a fault in the body
 * @param wrong what is wrong
 * @param right what would be right
 */
@Schema(description = "One thing wrong with the request, and what would be right")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Fault(
        @Schema(description = "Where in the body, a JSON Pointer as a URI fragment", example = "#/lifeStage") @Nullable
        String pointer,

        @Schema(description = "Which query parameter, for a fault outside the body", example = "limit") @Nullable
        String parameter,

        @Schema(example = "“tadpole” is not known") String wrong,

        @Schema(example = "one of: hatchling, juvenile, subadult, adult, unknown")
        String right) {

    static final Comparator<Fault> IN_ORDER = Comparator.comparing((Fault fault) -> String.valueOf(fault.parameter))
            .thenComparing(fault -> String.valueOf(fault.pointer));

    /** A fault in the body. */
    public static Fault at(String pointer, String wrong, String right) {
        return new Fault(pointer, null, wrong, right);
    }

    /** A fault in the query. */
    public static Fault inParameter(String parameter, String wrong, String right) {
        return new Fault(null, parameter, wrong, right);
    }
}
