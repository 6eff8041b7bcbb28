package varanid.intake.cagecard;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import varanid.intake.cagecard.StayState.Days;
import varanid.intake.quarantine.FollowUp;
import varanid.intake.quarantine.Standing;

class CardRulesTest {

    private static final LocalDate TODAY = LocalDate.of(2026, 11, 26);
    private static final LocalDate START = TODAY.minusDays(12);
    private static final LocalDate LATER = TODAY.plusDays(1);

    @Test
    void putsTheTagInLargeLettersElseTheName() {
        assertThat(CardRules.title(Optional.of("RB-1"), Optional.of("Pebble")))
                .isEqualTo(new CardRules.Title(Optional.of("RB-1"), Optional.of("Pebble")));
        assertThat(CardRules.title(Optional.empty(), Optional.of("Pebble")))
                .isEqualTo(new CardRules.Title(Optional.of("Pebble"), Optional.empty()));
        assertThat(CardRules.title(Optional.empty(), Optional.empty()))
                .isEqualTo(new CardRules.Title(Optional.empty(), Optional.empty()));
    }

    @Test
    void saysTheTagOnceWhereItIsTheNameToo() {
        assertThat(CardRules.title(Optional.of("RB-1"), Optional.of("RB-1")))
                .isEqualTo(new CardRules.Title(Optional.of("RB-1"), Optional.empty()));
    }

    @Test
    void tellsAnimalsThatCameTogetherApartByTheEndOfTheirIds() {
        assertThat(CardRules.shortId(UUID.fromString("01990000-0000-7000-8000-0123456789ab")))
                .isEqualTo("456789ab");
    }

    @ParameterizedTest
    @CsvSource({
        "standard, standard, false",
        "strict, standard, true",
        "standard, strict, true",
        "strict, strict, true",
        "something-new, standard, true",
        "standard, '', true"
    })
    void isStrictUnlessAllThatIsKnownSaysOtherwise(String bySummary, String byQuarantine, boolean strict) {
        assertThat(CardRules.isStrict(bySummary, byQuarantine)).isEqualTo(strict);
    }

    @ParameterizedTest
    @CsvSource({
        ", 0, not-told",
        "calm-so-far, 0, not-told",
        "calm-so-far, 1, hurt",
        "bites, 0, bites",
        "bites, 3, bites;hurt",
        "defends-itself, 0, defends-itself",
        "must-not-be-handled-alone, 2, hurt;must-not-be-handled-alone"
    })
    void warnsOfWhatWasToldAndTakesNoComfortFromCalm(String told, int hurt, String said) {
        assertThat(CardRules.handling(told, hurt)).isEqualTo(List.of(said.split(";")));
    }

    @Test
    void cutsBetweenCharactersAndShowsIt() {
        assertThat(CardRules.cut("\uD83E\uDD8E\uD83E\uDD8E\uD83E\uDD8E", 3))
                .isEqualTo("\uD83E\uDD8E\uD83E\uDD8E\uD83E\uDD8E");
        assertThat(CardRules.cut("\uD83E\uDD8E\uD83E\uDD8E\uD83E\uDD8E\uD83E\uDD8E", 3))
                .isEqualTo("\uD83E\uDD8E\uD83E\uDD8E…");
        assertThat(CardRules.cut("one two", 5)).isEqualTo("one…");
    }

    @Test
    void takesTheDaysOfAQuarantineFromItsClock() {
        assertThat(StayState.of(FollowUp.Where.IN_QUARANTINE, Optional.of(new Standing.Running(START, LATER)), TODAY))
                .isEqualTo(new Days(StayState.RUNNING, START, LATER));
        assertThat(StayState.of(
                        FollowUp.Where.IN_QUARANTINE,
                        Optional.of(new Standing.Held(START, LATER, TODAY, List.of(new UUID(0, 1)))),
                        TODAY))
                .isEqualTo(new Days(StayState.HELD, START, LATER));
    }

    @Test
    void saysOfNoQuarantineThatNoneBegan() {
        assertThat(StayState.of(FollowUp.Where.NOT_PLACED, Optional.empty(), TODAY))
                .isEqualTo(new Days(StayState.NOT_STARTED, null, null));
        assertThat(StayState.of(FollowUp.Where.GONE, Optional.empty(), TODAY))
                .isEqualTo(new Days(StayState.GONE, null, null));
        assertThat(StayState.of(FollowUp.Where.RESIDENT, Optional.empty(), TODAY))
                .isEqualTo(new Days(StayState.RESIDENTS, null, null));
    }

    @Test
    void saysOfResidentsOnlyWhatTheirRoomStillWaitsFor() {
        assertThat(StayState.of(FollowUp.Where.RESIDENT, Optional.of(new Standing.Running(START, TODAY)), TODAY))
                .isEqualTo(new Days(StayState.RESIDENTS, null, null));
        assertThat(StayState.of(FollowUp.Where.RESIDENT, Optional.of(new Standing.Running(START, LATER)), TODAY))
                .isEqualTo(new Days(StayState.RUNNING, START, LATER));
        assertThat(StayState.of(
                        FollowUp.Where.RESIDENT,
                        Optional.of(new Standing.Held(START, TODAY, TODAY, List.of(new UUID(0, 1)))),
                        TODAY))
                .isEqualTo(new Days(StayState.HELD, START, TODAY));
    }

    @Test
    void hasWordsForEverythingThatCanBeTold() {
        CardWords words = new CardWords();
        for (String code : List.of("bites", "hurt", "must-not-be-handled-alone", "defends-itself", "not-told")) {
            assertThat(words.told(code, "count", "2").text()).isNotBlank();
        }
        for (StayState state : StayState.values()) {
            assertThat(words.stay(state.code(), "start", "s", "day", "d").release())
                    .isNotBlank();
        }
        assertThat(words.stay("running-vet", "start", "s", "day", "d").release())
                .contains("vet");
    }

    @Test
    void tellsWhoGoesLastByTheIsolation() {
        CardWords words = new CardWords();
        assertThat(words.beforeOpening(true))
                .extracting(CageCard.Line::code)
                .contains("last")
                .doesNotContain("order");
        assertThat(words.beforeOpening(false))
                .extracting(CageCard.Line::code)
                .contains("order")
                .doesNotContain("last");
    }
}
