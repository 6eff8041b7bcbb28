package varanid.intake.visit;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import varanid.intake.platform.time.ReaderDates;

/** How lines of a page are put together. */
class PageViewTest {

    private static PageView pageOf(Statement... said) {
        return PageView.of(
                new Summary(
                        Instant.parse("2026-03-14T07:40:00Z"),
                        LocalDate.of(2026, 3, 14),
                        ZoneId.of("Europe/Lisbon"),
                        new Summary.Subject(new UUID(0, 1), "Crate 7", null, null, "adult", "female", null),
                        List.of(),
                        new Summary.Standing("routine", "Routine check", Basis.COMPUTED, "standard", "Apart"),
                        List.of(new Summary.Section(Part.SURROUNDINGS.code(), "Surroundings", false, List.of(said))),
                        List.of(),
                        null,
                        List.of()),
                Optional.empty(),
                new HandOverTexts(),
                WeightPlot.PAPER,
                ReaderDates.PAPER);
    }

    private static Statement small(String label, String text) {
        return Statement.of("fact", Basis.RECORDED, label, text).weighing(Statement.Weight.SMALL);
    }

    private static List<String> lines(PageView page) {
        return page.sections().get(0).statements().stream()
                .map(line -> line.label() + ":"
                        + String.join(
                                "|",
                                line.items().stream()
                                        .map(PageView.StatementView.Item::text)
                                        .toList()))
                .toList();
    }

    @Test
    void whatIsSaidOfSeveralThingsIsOneLine() {
        assertThat(lines(pageOf(small("Stool", "not recorded"), small("Urate", "not recorded"))))
                .containsExactly("Stool, Urate:not recorded");
    }

    @Test
    void whatIsSaidOfOneThingIsOneLine() {
        assertThat(lines(pageOf(small("Advice", "one"), small("Advice", "two"))))
                .containsExactly("Advice:one|two");
    }

    @Test
    void aLineThatSaysMoreIsNotLostBesideOneThatSaysTheSame() {
        assertThat(lines(pageOf(small("Advice", "one"), small("Advice", "two"), small("Other", "two"))))
                .containsExactly("Advice:one|two", "Other:two");
    }
}
