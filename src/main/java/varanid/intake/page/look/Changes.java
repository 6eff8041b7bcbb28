package varanid.intake.page.look;

import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import varanid.intake.assessment.ReadLook;
import varanid.intake.assessment.SignWords;
import varanid.intake.scoring.LookComparison;
import varanid.intake.scoring.LookComparison.Change;
import varanid.intake.scoring.LookReading;

/**
 * What a look found to be other than the look before it had.
 *
 * @param since when the look before was
 * @param path to its page
 * @param kinds what changed in which way, worse things first; none where no sign changed
 * @param notAll whether the two were made by versions of the checklist that do not know all the same
 */
public record Changes(String since, String path, List<Kind> kinds, boolean notAll) {

    private static final List<LookComparison.Kind> ORDER = List.of(
            LookComparison.Kind.NEW,
            LookComparison.Kind.WORSE,
            LookComparison.Kind.CHANGED,
            LookComparison.Kind.FIRST_SEEN,
            LookComparison.Kind.CANNOT_TELL,
            LookComparison.Kind.NO_LONGER_SEEN,
            LookComparison.Kind.BETTER,
            LookComparison.Kind.GONE);

    /** One way to change; {@code code} is the end of the key of its name. */
    public record Kind(String code, List<Line> lines) {}

    /**
     * One sign.
     *
     * @param told as it is now, or as it was where it is not known or not there now
     * @param was what it was before; empty where that is told already, or was not known
     */
    public record Line(String told, String was) {}

    static Changes of(ReadLook before, ReadLook after, ZoneId zone, Locale locale) {
        LookComparison comparison = LookComparison.of(before.reading(), after.reading());
        return new Changes(
                Decision.moment(before.kept().occurredAt(), zone, locale),
                DecisionPage.path(before.kept().animalId(), before.kept().id()),
                ORDER.stream()
                        .map(kind -> new Kind(
                                kind.name().toLowerCase(Locale.ROOT).replace('_', '-'),
                                comparison.changes().stream()
                                        .filter(change -> change.kind() == kind)
                                        .flatMap(Changes::line)
                                        .toList()))
                        .filter(kind -> !kind.lines().isEmpty())
                        .toList(),
                !comparison.notComparable().isEmpty());
    }

    /** Nothing where it was a sign neither time. */
    private static Stream<Line> line(Change change) {
        LookReading.@Nullable State before = change.before();
        LookReading.@Nullable State after = change.after();
        if (after != null && after.isSign()) {
            return Stream.of(new Line(tell(after), before == null ? "" : label(before)));
        }
        return before != null && before.isSign() ? Stream.of(new Line(tell(before), "")) : Stream.empty();
    }

    private static String tell(LookReading.State state) {
        return SignWords.tell(state.finding(), Objects.requireNonNull(state.level()));
    }

    private static String label(LookReading.State state) {
        return SignWords.small(SignWords.label(Objects.requireNonNull(state.level())));
    }
}
