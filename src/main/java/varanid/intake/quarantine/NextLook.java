package varanid.intake.quarantine;

import java.time.LocalDate;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import varanid.intake.assessment.KeptLook;

/**
 * When an animal is looked at again whatever the schedule says: some days after a look that calls for it, and after each
 * look from then on until one is plainly without. Pure.
 *
 * <p>A look is plainly without where neither its urgency nor its isolation calls for another, and everything that did was
 * looked for and is not there: that nobody could see it ends nothing.
 */
final class NextLook {

    private final QuarantinePolicy.LookAgain rule;
    private final Set<String> wanted = new HashSet<>();
    private Optional<LocalDate> since = Optional.empty();

    private NextLook(QuarantinePolicy.LookAgain rule) {
        this.rule = rule;
    }

    /**
     * The day of the next look that is called for; nothing where the schedule is enough.
     *
     * @param looks by when they occurred
     * @param waits the days on which days began to wait on account of the animal, for what no look says
     */
    static Optional<LocalDate> find(QuarantinePolicy.LookAgain rule, List<KeptLook> looks, List<LocalDate> waits) {
        NextLook next = new NextLook(rule);
        looks.forEach(next::take);
        if (rule.whereTheDaysWait()) {
            // Of a look of that very day nobody can say whether it came after.
            waits.stream()
                    .filter(day ->
                            looks.stream().noneMatch(look -> look.localDate().isAfter(day)))
                    .forEach(next::callFrom);
        }
        return next.since.map(day -> day.plusDays(rule.afterDays()));
    }

    private void take(KeptLook look) {
        if (calls(look)) {
            look.signs().stream()
                    .filter(this::calls)
                    .map(KeptLook.Sign::finding)
                    .forEach(wanted::add);
            callFrom(look.localDate());
        } else if (isPlainlyWithout(look)) {
            wanted.clear();
            since = Optional.empty();
        } else {
            callFrom(look.localDate());
        }
    }

    private void callFrom(LocalDate day) {
        since = since.filter(before -> before.isAfter(day)).or(() -> Optional.of(day));
    }

    private boolean calls(KeptLook look) {
        return rule.afterUrgency().contains(look.urgency()) || byRoute(look.isolationRoutes());
    }

    private boolean calls(KeptLook.Sign sign) {
        return sign.floor().filter(rule.afterUrgency()::contains).isPresent() || byRoute(sign.strictRoutes());
    }

    private boolean byRoute(Set<String> routes) {
        return !Collections.disjoint(
                routes, rule.afterRoutes().stream().map(Route::code).toList());
    }

    private boolean isPlainlyWithout(KeptLook look) {
        return wanted.stream()
                .allMatch(finding -> look.answered(finding)
                        && look.findSign(finding).filter(this::calls).isEmpty());
    }
}
