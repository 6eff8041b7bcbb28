package varanid.intake.diary;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import varanid.intake.animal.LifeStage;

/** The rules of the trend are our own proposal; the tests check what follows from them, not that they are right. */
class DemeanourTrendTest {

    private static final DemeanourRules RULES = new DemeanourReference().rules();
    private static final LocalDate DAY = LocalDate.of(2026, 3, 9);

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "frantic fearful uneasy watchful            | calmer          | 6 | 0 | 0",
                "watchful uneasy fearful frantic            | more-fearful    | 0 | 6 | 0",
                "fearful fearful fearful fearful            | no-clear-change | 0 | 0 | 6",
                "fearful uneasy fearful uneasy              | no-clear-change | 3 | 1 | 2",
                // One odd day among calmer and calmer ones.
                "frantic frantic frantic uneasy calm fearful | calmer         | 10 | 2 | 3",
                "frantic fearful calm                       | cannot-tell     | 3 | 0 | 0",
                "frantic                                    | cannot-tell     | 0 | 0 | 0",
            })
    void comparesEveryTwoDays(String words, String direction, int calmer, int moreFearful, int alike) {
        DemeanourTrend trend = DemeanourTrend.of(words(words), RULES.trend());
        assertThat(trend.direction().code()).isEqualTo(direction);
        assertThat(List.of(trend.calmerPairs(), trend.moreFearfulPairs(), trend.alikePairs()))
                .containsExactly(calmer, moreFearful, alike);
    }

    @Test
    void cannotTellFromNothing() {
        assertThat(DemeanourTrend.of(List.of(), RULES.trend()).direction())
                .isEqualTo(DemeanourTrend.Direction.CANNOT_TELL);
    }

    @Test
    void turnsRoundWhenTheDaysDo() {
        Map<DemeanourTrend.Direction, DemeanourTrend.Direction> turned = new EnumMap<>(Map.of(
                DemeanourTrend.Direction.CALMER, DemeanourTrend.Direction.MORE_FEARFUL,
                DemeanourTrend.Direction.MORE_FEARFUL, DemeanourTrend.Direction.CALMER,
                DemeanourTrend.Direction.NO_CLEAR_CHANGE, DemeanourTrend.Direction.NO_CLEAR_CHANGE,
                DemeanourTrend.Direction.CANNOT_TELL, DemeanourTrend.Direction.CANNOT_TELL));
        Random random = new Random(31);
        Set<DemeanourTrend.Direction> met = EnumSet.noneOf(DemeanourTrend.Direction.class);
        for (int n = 0; n < 2_000; n++) {
            List<Demeanour> days = new ArrayList<>();
            for (int day = random.nextInt(15); day > 0; day--) {
                days.add(Demeanour.values()[random.nextInt(5)]);
            }
            DemeanourTrend there = DemeanourTrend.of(days, RULES.trend());
            Collections.reverse(days);
            DemeanourTrend back = DemeanourTrend.of(days, RULES.trend());
            assertThat(back.direction()).as("%s", days).isEqualTo(turned.get(there.direction()));
            assertThat(there.calmerPairs() + there.moreFearfulPairs() + there.alikePairs())
                    .isEqualTo(days.size() * (days.size() - 1) / 2);
            met.add(there.direction());
        }
        assertThat(met).containsExactlyInAnyOrder(DemeanourTrend.Direction.values());
    }

    @Test
    void takesTheMostFearfulWordOfADayAndLeavesDullOut() {
        List<DiaryEntry> entries = List.of(
                entry(0, Demeanour.CALM),
                entry(0, Demeanour.FEARFUL),
                entry(0, Demeanour.DULL),
                entry(1, Demeanour.DULL),
                entry(2, Demeanour.WATCHFUL),
                entry(9, Demeanour.CALM));
        assertThat(DemeanourTrend.byDay(entries, DAY, DAY.plusDays(8)))
                .isEqualTo(Map.of(DAY, Demeanour.FEARFUL, DAY.plusDays(2), Demeanour.WATCHFUL));
    }

    @ParameterizedTest
    @CsvSource({
        "fearful frantic calm, true",
        "calm fearful fearful calm, true",
        "fearful calm, false",
        "uneasy fearful calm, false",
        "fearful uneasy calm, false",
        "fearful fearful watchful, false",
        "fearful frantic fearful, false",
        "calm, false",
    })
    void isSuddenlyCalmOnlyAfterFearfulDays(String words, boolean suddenly) {
        TreeMap<LocalDate, Demeanour> byDay = new TreeMap<>();
        words(words).forEach(word -> byDay.put(DAY.plusDays(byDay.size() * 2L), word));
        assertThat(DemeanourTrend.isSuddenlyCalm(byDay, RULES.suddenlyCalm())).isEqualTo(suddenly);
    }

    @Test
    void hasAdviceForEveryWordAndLifeStageExceptThatNothingIsWrongWithCalm() {
        for (LifeStage stage : LifeStage.values()) {
            assertThat(advice(Demeanour.CALM, stage)).isEmpty();
            assertThat(advice(Demeanour.WATCHFUL, stage)).containsExactly("eye-level", "short-calm-visits");
            assertThat(advice(Demeanour.DULL, stage)).containsExactly("dull-is-not-calm");
            for (Demeanour word : List.of(Demeanour.FEARFUL, Demeanour.FRANTIC)) {
                assertThat(advice(word, stage))
                        .contains("fear-is-not-illness", "cover", "eye-level", "short-calm-visits")
                        .containsAnyOf("small-footprint", "room-to-turn-away");
            }
        }
        assertThat(advice(Demeanour.FRANTIC, LifeStage.HATCHLING))
                .contains("small-footprint", "young-and-new-are-fearful", "leave-a-frantic-animal");
        assertThat(advice(Demeanour.FRANTIC, LifeStage.ADULT)).doesNotContain("small-footprint");
    }

    @Test
    void refusesRulesThatDoNotFitTogether() {
        assertThatThrownBy(() -> new DemeanourRules(
                        RULES.words().subList(1, 6),
                        new DemeanourRules.Trend(3, 4, 0.5, "m", List.of("X")),
                        3,
                        RULES.suddenlyCalm(),
                        RULES.advice(),
                        RULES.lookNow().subList(0, 1),
                        Map.of("X", "ours")))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("the scale is not the one")
                .hasMessageContaining("the trend can never be told")
                .hasMessageContaining("look now for mite-seen")
                .hasMessageContaining("no known source");
    }

    private static List<String> advice(Demeanour word, LifeStage stage) {
        return RULES.advice().stream()
                .filter(advice -> advice.fits(EnumSet.of(word), stage.code(), DemeanourTrend.Direction.CANNOT_TELL))
                .map(DemeanourRules.Advice::id)
                .toList();
    }

    private static List<Demeanour> words(String words) {
        List<Demeanour> all = new ArrayList<>();
        for (String word : words.split(" ")) {
            for (Demeanour each : Demeanour.values()) {
                if (each.code().equals(word)) {
                    all.add(each);
                }
            }
        }
        return all;
    }

    private static DiaryEntry entry(int day, Demeanour demeanour) {
        Instant at = DAY.plusDays(day).atStartOfDay(ZoneOffset.UTC).toInstant();
        return new DiaryEntry(
                new UUID(0, 1),
                new UUID(0, 2),
                new UUID(0, 3),
                at,
                at,
                DAY.plusDays(day),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.of(demeanour),
                Cleaning.NONE,
                MiteCheck.NOT_LOOKED,
                Optional.empty());
    }
}
