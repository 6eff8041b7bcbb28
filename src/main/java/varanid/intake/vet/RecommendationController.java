package varanid.intake.vet;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.enums.ParameterIn;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ResponseEntity;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import varanid.intake.animal.Animals;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.Query;

@RestController
@RequestMapping("/api/v1/animals/{animalId}/recommendation")
@Tag(name = "Vet's answers")
class RecommendationController {

    private final Recommendations recommendations;
    private final Animals animals;
    private final Words words;
    private final Clock clock;

    RecommendationController(Recommendations recommendations, Animals animals, Words words, Clock clock) {
        this.recommendations = recommendations;
        this.animals = animals;
        this.words = words;
        this.clock = clock;
    }

    @GetMapping
    @Operation(
            summary = "How soon a vet and how strictly apart, as it holds, and who says so",
            description = "A confirmed answer of a vet stands above what is worked out from what the vet had seen. What"
                    + " came after can only raise it, and what is new and cannot wait is named: call the vet. What is"
                    + " worked out stays visible.")
    @Parameter(
            name = "asOf",
            in = ParameterIn.QUERY,
            description = "the day to read it on, today unless said; later looks and answers are left out",
            schema = @Schema(type = "string", format = "date"))
    @Transactional(readOnly = true)
    public ResponseEntity<RecommendationView> recommendation(Caller caller, @PathVariable UUID animalId, Query query) {
        Present present = Present.at(clock, caller.zone());
        LocalDate asOf = query.date("asOf")
                .check(day -> !present.isFuture(day), "lies in the future", "today or earlier")
                .orElse(present.today());
        query.orThrow();
        if (animals.find(caller.organisationId(), animalId).isEmpty()) {
            throw ProblemException.notFound("animal");
        }
        return ResponseEntity.ok(RecommendationView.of(
                animalId,
                asOf,
                caller.zone(),
                recommendations.find(caller.organisationId(), caller.zone(), animalId, asOf),
                words));
    }

    /** What holds. */
    @Schema(name = "Recommendation")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record RecommendationView(
            UUID animalId,
            LocalDate asOf,
            String headline,

            @Schema(description = "absent where nobody has looked and no vet has said how soon") @Nullable
            SaidView urgency,

            SaidView isolation,

            @Schema(description = "the ways of spreading that strict isolation is for, as far as looks name them")
            Set<String> isolationRoutes,

            @Schema(description = "whether a vet has to be called because of newSince")
            boolean callVet,

            @Schema(description = "heads every page while the vet has to be called") @Nullable
            String alert,

            @Schema(description = "what the vet whose answer stands could not have seen, and that cannot wait")
            List<NewSinceView> newSince,

            @Schema(description = "what is worked out from the last look; absent where nobody has looked") @Nullable
            ComputedView computed,

            @Schema(description = "the confirmed answer that was given last") @Nullable
            AnswerView standing,

            @Schema(description = "later answers whose writer nobody confirmed: they raise, and lower nothing")
            List<AnswerView> unconfirmed,

            List<String> cautions) {

        static RecommendationView of(UUID animalId, LocalDate asOf, ZoneId zone, Recommendation it, Words words) {
            return new RecommendationView(
                    animalId,
                    asOf,
                    it.headline(),
                    it.urgency()
                            .map(code -> new SaidView(code, words.urgency(code), code(it.by())))
                            .orElse(null),
                    new SaidView(it.isolation(), words.isolation(it.isolation()), code(it.isolationBy())),
                    new TreeSet<>(it.routes()),
                    it.callVet(),
                    it.alert().orElse(null),
                    it.newSince().stream()
                            .map(each -> NewSinceView.of(each, words.sign(each, zone)))
                            .toList(),
                    it.computed().map(ComputedView::of).orElse(null),
                    it.standing().map(AnswerView::of).orElse(null),
                    it.unconfirmed().stream().map(AnswerView::of).toList(),
                    words.cautions());
        }

        private static String code(Recommendation.By by) {
            return by.name().toLowerCase(Locale.ROOT);
        }
    }

    @Schema(name = "RecommendationSaid")
    record SaidView(
            String code,
            String label,

            @Schema(allowableValues = {"computed", "vet"}) String by) {}

    @Schema(name = "NewSinceVetsAnswer")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record NewSinceView(
            @Schema(description = "id of the finding; whole-look where it is all signs together")
            String finding,

            String level,
            String label,

            @Schema(description = "the same, and that the last look does not show it where it does not")
            String text,

            @Schema(allowableValues = {"asap", "stat"}) String floor,

            UUID assessmentId,
            Instant occurredAt,

            @Schema(description = "when the last look was, where it does not show it") @Nullable
            Instant notSeenAt) {

        static NewSinceView of(Recommendation.NewSince it, String text) {
            return new NewSinceView(
                    it.finding(),
                    it.level(),
                    it.label(),
                    text,
                    it.floor(),
                    it.lookId(),
                    it.at(),
                    it.notSeenAt().orElse(null));
        }
    }

    @Schema(name = "ComputedRecommendation", description = "worked out by expert-set weights that nobody has validated")
    record ComputedView(
            UUID assessmentId,
            Instant occurredAt,
            String urgency,
            String label,
            String headline,
            String isolation,
            Set<String> isolationRoutes) {

        static ComputedView of(Recommendation.Computed it) {
            return new ComputedView(
                    it.lookId(),
                    it.at(),
                    it.urgency(),
                    it.label(),
                    it.headline(),
                    it.isolation(),
                    new TreeSet<>(it.routes()));
        }
    }
}
