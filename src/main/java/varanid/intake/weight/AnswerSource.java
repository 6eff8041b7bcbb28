package varanid.intake.weight;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Where an answer comes from that nobody gave: which weighings, in words.
 *
 * @param kind two readings, a slope, a weighing that is still to come, or readings that cannot be compared
 * @param text in words
 * @param readings which, oldest first; those of a slope are told by its days
 * @param dueOn when the next weighing is due, where the answer waits for it
 * @param caveats what a reader should know
 */
@Schema(name = "AnswerFromWeighings")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record AnswerSource(
        @Schema(allowableValues = {"two-readings", "slope", "not-yet-due", "not-comparable"})
        String kind,

        String text,
        List<ReadingView> readings,
        @Nullable LocalDate dueOn,
        List<CaveatView> caveats) {}
