package varanid.intake.diary;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.enums.ParameterIn;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
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
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.Query;

@RestController
@RequestMapping("/api/v1/animals/{animalId}/demeanour")
@Tag(name = "Diary")
class DemeanourController {

    private final Diary diary;
    private final DiaryKeeper keeper;
    private final Animals animals;
    private final DemeanourRules rules;
    private final Clock clock;

    DemeanourController(Diary diary, DiaryKeeper keeper, Animals animals, DemeanourReference reference, Clock clock) {
        this.diary = diary;
        this.keeper = keeper;
        this.animals = animals;
        this.rules = reference.rules();
        this.clock = clock;
    }

    @GetMapping
    @Operation(
            summary = "How an animal bears people lately, what that says about its housing, and what is known of its"
                    + " days",
            description = "Fear is not illness: nothing here adds points. lookNow names what asks for a look.")
    @Parameter(
            name = "asOf",
            in = ParameterIn.QUERY,
            description = "the day it is asked for, in the organisation's zone; today where none is named",
            schema = @Schema(type = "string", format = "date"))
    @Transactional(readOnly = true)
    public ResponseEntity<DemeanourView> demeanour(Caller caller, @PathVariable UUID animalId, Query query) {
        Given<LocalDate> asked = query.date("asOf");
        query.orThrow();
        Animals.Newcomer animal =
                animals.find(caller.organisationId(), animalId).orElseThrow(() -> ProblemException.notFound("animal"));
        LocalDate asOf = asked.orElse(Present.at(clock, caller.zone()).today());
        List<DiaryEntry> entries = diary.list(caller.organisationId(), animalId);
        LocalDate from = asOf.minusDays(rules.trend().windowDays() - 1L);
        TreeMap<LocalDate, Demeanour> byDay = DemeanourTrend.byDay(entries, from, asOf);
        DemeanourTrend trend = DemeanourTrend.of(List.copyOf(byDay.values()), rules.trend());
        LocalDate recently = asOf.minusDays(rules.recentDays() - 1L);
        Map<LocalDate, Demeanour> recentDays = byDay.tailMap(recently);
        List<LocalDate> dullOn = dullOn(entries, from, asOf);
        boolean dull = dullOn.stream().anyMatch(day -> !day.isBefore(recently));

        Set<Demeanour> recent = EnumSet.noneOf(Demeanour.class);
        Optional<Demeanour> steering = DemeanourTrend.mostFearful(recentDays);
        steering.ifPresent(recent::add);
        if (dull) {
            recent.add(Demeanour.DULL);
        }
        List<LookNow> lookNow = new ArrayList<>();
        if (dull) {
            lookNow.add(LookNow.of(rules, DemeanourRules.DULL));
        }
        if (keeper.isSuddenlyCalmAndIll(caller.organisationId(), animalId, entries, asOf)) {
            lookNow.add(LookNow.of(rules, DemeanourRules.SUDDENLY_CALM));
        }
        return ResponseEntity.ok(new DemeanourView(
                asOf,
                animal.lifeStage().code(),
                steering.orElse(null),
                new TrendView(
                        trend.direction(),
                        rules.trend().windowDays(),
                        trend.days(),
                        trend.calmerPairs(),
                        trend.moreFearfulPairs(),
                        trend.alikePairs(),
                        rules.trend().method(),
                        rules.trend().source()),
                byDay.entrySet().stream()
                        .map(day -> new DayView(day.getKey(), day.getValue()))
                        .toList(),
                dullOn,
                new SinceView(
                        since(SinceLast.ate(entries, asOf)),
                        since(SinceLast.noticed(entries, DiaryEntry::drank, asOf)),
                        since(SinceLast.noticed(entries, DiaryEntry::stool, asOf)),
                        since(SinceLast.noticed(entries, DiaryEntry::urate, asOf))),
                rules.advice().stream()
                        .filter(advice -> advice.fits(recent, animal.lifeStage().code(), trend.direction()))
                        .map(advice -> new AdviceView(advice.id(), advice.text(), advice.source()))
                        .toList(),
                lookNow,
                rules.words().stream()
                        .map(word -> new WordView(word.code(), word.label(), word.meaning()))
                        .toList(),
                rules.sources()));
    }

    private static List<LocalDate> dullOn(List<DiaryEntry> entries, LocalDate from, LocalDate to) {
        return entries.stream()
                .filter(entry ->
                        entry.demeanour().filter(it -> it == Demeanour.DULL).isPresent())
                .map(DiaryEntry::localDate)
                .filter(day -> !day.isBefore(from) && !day.isAfter(to))
                .distinct()
                .sorted()
                .toList();
    }

    private static DaysSince since(SinceLast it) {
        return new DaysSince(
                it.atLeastDays(), it.atMostDays().orElse(null), it.lastOn().orElse(null));
    }

    @Schema(name = "Demeanour")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record DemeanourView(
            LocalDate asOf,
            String lifeStage,

            @Schema(
                    description = "the most fearful word of the last days, which steers the advice; absent where"
                            + " nobody wrote one")
            @Nullable
            Demeanour recent,

            TrendView trend,

            @Schema(description = "the most fearful word of each day in the window")
            List<DayView> days,

            List<LocalDate> dullOn,
            SinceView since,
            @Schema(description = "on housing and visits") List<AdviceView> advice,
            List<LookNow> lookNow,
            @Schema(description = "what each word means") List<WordView> words,
            Map<String, String> sources) {}

    @Schema(name = "DemeanourTrend")
    record TrendView(
            DemeanourTrend.Direction direction,
            int windowDays,

            @Schema(description = "with a word on the scale")
            int days,

            @Schema(description = "of every two days, how often the later was calmer")
            int calmerPairs,

            int moreFearfulPairs,
            int alikePairs,
            String method,
            List<String> sources) {}

    record DayView(LocalDate on, Demeanour demeanour) {}

    @Schema(name = "SinceLast", description = "how long ago, as far as is known")
    record SinceView(DaysSince ate, DaysSince drank, DaysSince stool, DaysSince urate) {}

    @Schema(name = "DaysSince")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record DaysSince(
            @Schema(description = "days without a gap on which somebody said no; 0 where it may have been today")
            long atLeastDays,

            @Schema(description = "absent where it was never seen") @Nullable
            Long atMostDays,

            @Nullable LocalDate lastOn) {}

    @Schema(name = "HousingAdvice")
    record AdviceView(String id, String text, List<String> sources) {}

    @Schema(name = "DemeanourWord")
    record WordView(Demeanour code, String label, String meaning) {}
}
