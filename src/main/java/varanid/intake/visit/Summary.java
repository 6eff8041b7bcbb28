package varanid.intake.visit;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * What a vet should know of one animal at one moment. Every form of it says all of this, and nothing else.
 *
 * @param madeAt the moment; an answer says by it what its writer had seen
 * @param asOf the day in the organisation's zone
 * @param zone in which moments are shown
 * @param animal which one
 * @param alerts what heads every page, the weightiest first
 * @param standing how soon a vet and how strictly apart, as it stands now
 * @param sections every part that says something, in order
 * @param weights what is plotted; empty where nothing was weighed
 * @param look the last look as it was kept, verbatim; nothing where nobody has looked
 * @param notices what every summary says of itself: expert-set weights, no diagnosis, a licensed vet decides
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record Summary(
        Instant madeAt,
        LocalDate asOf,
        ZoneId zone,
        Subject animal,
        List<Alert> alerts,
        Standing standing,
        List<Section> sections,
        List<WeightPoint> weights,
        @Nullable JsonNode look,
        List<String> notices) {

    Summary {
        alerts = List.copyOf(alerts);
        sections = List.copyOf(sections);
        weights = List.copyOf(weights);
        notices = List.copyOf(notices);
    }

    /**
     * The animal.
     *
     * @param title what it is called, else its tag, else "Animal without a name"
     * @param species genus and species; nothing where nobody knows
     * @param lifeStage in words
     * @param sex in words
     * @param transponder its fifteen digits
     */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Subject(
            UUID id,
            String title,
            @Nullable String tag,
            @Nullable String species,
            String lifeStage,
            String sex,
            @Nullable String transponder) {}

    /**
     * Something that heads every page.
     *
     * @param code such as {@code new-since-the-vets-answer}
     * @param text for people
     */
    record Alert(String code, String text) {}

    /**
     * How soon and how apart, as it stands.
     *
     * @param urgency a request-priority code; nothing where nobody has looked and no vet has spoken
     * @param headline for people
     * @param from whether this service worked it out, or a vet said so
     * @param isolation {@code standard} or {@code strict}
     * @param isolationText for people, with the ways it may spread
     */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Standing(@Nullable String urgency, String headline, Basis from, String isolation, String isolationText) {}

    /**
     * One part.
     *
     * @param code of the part
     * @param title for people
     * @param history whether it may stand on a second page
     * @param statements at least one, in order
     */
    record Section(String code, String title, boolean history, List<Statement> statements) {
        Section {
            statements = List.copyOf(statements);
        }
    }

    /**
     * One weighing of the plot.
     *
     * @param on the day in the organisation's zone
     * @param grams as worked out from what was typed
     * @param stepGrams how finely the scale reads; nothing where that is not known
     * @param comparable whether the trend compares with it; one that was wet or freshly fed is not
     */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record WeightPoint(
            Instant at,
            LocalDate on,
            BigDecimal grams,
            @Nullable BigDecimal stepGrams,
            boolean comparable) {}
}
