package varanid.intake.enclosure;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * An animal's surroundings for whoever reads a page about it.
 *
 * @param readings what was read, in the order of the quantities
 * @param facts how it is set up, as far as somebody said
 * @param advice what deserves it, stale readings left aside
 * @param notRead what nobody read or what is too old, the most useful first: their codes
 */
public record SurroundingsWords(List<Read> readings, List<Fact> facts, List<String> advice, List<String> notRead) {

    public SurroundingsWords {
        readings = List.copyOf(readings);
        facts = List.copyOf(facts);
        advice = List.copyOf(advice);
        notRead = List.copyOf(notRead);
    }

    /**
     * One value.
     *
     * @param quantity its code
     * @param unit a UCUM code
     * @param on the day it was read; nothing for what is worked out
     * @param standing where it lies to the ranges, by its code
     * @param ranges to judge by
     */
    public record Read(
            String quantity,
            BigDecimal value,
            String unit,
            Optional<LocalDate> on,
            boolean stale,
            String standing,
            List<Range> ranges) {}

    /** A range of one sort of source; one end may be open. */
    public record Range(String kind, Optional<BigDecimal> from, Optional<BigDecimal> to) {}

    /** What somebody said of the set-up. */
    public record Fact(String fact, String question, String value, LocalDate on, boolean stale) {}

    static SurroundingsWords of(SurroundingsView view) {
        return new SurroundingsWords(
                view.quantities().stream()
                        .flatMap(each -> Optional.ofNullable(each.value()).stream()
                                .map(value -> new Read(
                                        each.quantity(),
                                        value,
                                        each.unit(),
                                        Optional.ofNullable(each.read()).map(SurroundingsView.ReadView::localDate),
                                        each.stale(),
                                        each.standing(),
                                        each.ranges().stream()
                                                .filter(SurroundingsView.RangeView::applies)
                                                .map(range -> new Range(
                                                        range.kind(),
                                                        Optional.ofNullable(range.from()),
                                                        Optional.ofNullable(range.to())))
                                                .toList())))
                        .toList(),
                view.facts().stream()
                        .map(each -> new Fact(
                                each.fact(),
                                each.question(),
                                each.value(),
                                each.read().localDate(),
                                each.read().stale()))
                        .toList(),
                view.signs().stream()
                        .filter(sign -> !sign.stale())
                        .map(SurroundingsView.SignView::advice)
                        .toList(),
                view.notKnown().stream().map(SurroundingsView.UnknownView::id).toList());
    }
}
