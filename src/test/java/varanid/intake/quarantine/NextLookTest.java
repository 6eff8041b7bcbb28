package varanid.intake.quarantine;

import static org.assertj.core.api.Assertions.assertThat;
import static varanid.intake.quarantine.Room.POLICY;
import static varanid.intake.quarantine.Room.day;
import static varanid.intake.quarantine.Room.id;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import varanid.intake.assessment.KeptLook;

class NextLookTest {

    private static final KeptLook.Sign MITES =
            new KeptLook.Sign("mites", "few", "a few mites", BigDecimal.ONE, Optional.of("urgent"), Set.of("contact"));
    private static final KeptLook.Sign BREATHING =
            new KeptLook.Sign("laboured-breathing", "marked", "marked", BigDecimal.TEN, Optional.of("stat"), Set.of());

    private static KeptLook look(int day, String urgency, List<KeptLook.Sign> signs, String... answered) {
        Instant at = day(day).atTime(10, 0).toInstant(ZoneOffset.UTC);
        return new KeptLook(
                id("look " + day + urgency),
                id("Ada"),
                at,
                at,
                day(day),
                urgency,
                Optional.of("standard"),
                signs.stream()
                        .flatMap(sign -> sign.strictRoutes().stream())
                        .collect(java.util.stream.Collectors.toSet()),
                true,
                signs,
                List.of(),
                Set.of(answered));
    }

    private static Optional<LocalDate> next(List<Integer> waits, KeptLook... looks) {
        return NextLook.find(
                POLICY.lookAgain(),
                List.of(looks),
                waits.stream().map(Room::day).toList());
    }

    private static Optional<LocalDate> next(KeptLook... looks) {
        return next(List.of(), looks);
    }

    @Test
    void nothingIsCalledForWhereNothingWasSeen() {
        assertThat(next()).isEmpty();
        assertThat(next(look(0, "urgent", List.of()))).isEmpty();
    }

    @Test
    void aStrictSignCallsForALookTheNextMorning() {
        assertThat(next(look(5, "urgent", List.of(MITES)))).contains(day(6));
    }

    @Test
    void aNeedForAVetWithinADayCallsForOneWithoutAnySignOfItsOwn() {
        assertThat(next(look(5, "asap", List.of()))).contains(day(6));
        assertThat(next(look(5, "stat", List.of(BREATHING)))).contains(day(6));
    }

    @Test
    void aPlainLookWithoutEndsIt() {
        assertThat(next(look(5, "urgent", List.of(MITES)), look(6, "routine", List.of(), "mites")))
                .isEmpty();
    }

    @Test
    void aLookThatCouldNotSeeItEndsNothing() {
        assertThat(next(look(5, "urgent", List.of(MITES)), look(6, "routine", List.of())))
                .contains(day(7));
        assertThat(next(
                        look(5, "urgent", List.of(MITES)),
                        look(6, "routine", List.of()),
                        look(9, "routine", List.of(), "mites")))
                .isEmpty();
    }

    @Test
    void everythingThatCalledForItHasToBeGone() {
        KeptLook both = look(5, "stat", List.of(MITES, BREATHING));
        assertThat(next(both, look(6, "routine", List.of(), "mites"))).contains(day(7));
        assertThat(next(both, look(6, "routine", List.of(), "mites", "laboured-breathing")))
                .isEmpty();
    }

    @Test
    void ofSeveralLooksOnOneDayTheLastSays() {
        KeptLook without = look(5, "routine", List.of(), "mites");
        KeptLook with = look(5, "urgent", List.of(MITES));
        assertThat(next(with, without)).isEmpty();
        assertThat(next(without, with)).contains(day(6));
    }

    @Test
    void whereTheDaysBeginToWaitForAnotherReasonItIsLookedAtTheNextMorning() {
        assertThat(next(List.of(5))).contains(day(6));
        assertThat(next(List.of(5), look(5, "routine", List.of()))).contains(day(6));
        assertThat(next(List.of(5), look(6, "routine", List.of()))).isEmpty();
    }

    @Test
    void theDayDoesNotMoveWhileNothingIsRecorded() {
        assertThat(next(List.of(3), look(5, "urgent", List.of(MITES)))).contains(day(6));
    }
}
