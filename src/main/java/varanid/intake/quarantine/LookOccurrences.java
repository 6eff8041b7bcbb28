package varanid.intake.quarantine;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import varanid.intake.assessment.KeptLook;

/**
 * Which occurrences the looks at one animal are for the rooms it stood in. Pure.
 *
 * <p>Of the last look up to the day it was placed, every sign that calls for strict isolation by air or contact is one of
 * that day. Of each later look, every such sign is one that the look before did not have. Excused signs count fully.
 */
final class LookOccurrences {

    private static final String ROUTE = "route:";

    private LookOccurrences() {}

    /**
     * An occurrence.
     *
     * @param part the finding, or the route for which several signs only together call for strict isolation
     * @param label in the checklist's words
     */
    record Sign(UUID room, LocalDate on, UUID look, String part, String cause, String label) {}

    /** One strict sign of a look. */
    private record Strict(String cause, String label) {}

    /**
     * All of them.
     *
     * @param looks that stand, by when they occurred
     */
    static List<Sign> list(QuarantinePolicy policy, List<KeptLook> looks, List<Stay> stays) {
        List<Sign> signs = new ArrayList<>();
        for (Stay stay : stays) {
            signs.addAll(ofArrival(policy, looks, stay));
            @Nullable KeptLook before = null;
            for (KeptLook look : looks) {
                if (look.localDate().isAfter(stay.from()) && stay.touches(look.localDate())) {
                    Map<String, Strict> known = before == null ? Map.of() : strict(policy, before);
                    strict(policy, look).forEach((part, sign) -> {
                        if (!hasCause(known.get(part), sign.cause())) {
                            signs.add(new Sign(
                                    stay.room(), look.localDate(), look.id(), part, sign.cause(), sign.label()));
                        }
                    });
                }
                before = look;
            }
        }
        return signs;
    }

    /** Those that it brings along on being placed. */
    static List<Sign> ofArrival(QuarantinePolicy policy, List<KeptLook> looks, Stay stay) {
        List<Sign> signs = new ArrayList<>();
        lastUpTo(looks, stay.from())
                .ifPresent(look -> strict(policy, look)
                        .forEach((part, sign) -> signs.add(
                                new Sign(stay.room(), stay.from(), look.id(), part, sign.cause(), sign.label()))));
        return signs;
    }

    /** Whether what was recorded as an occurrence is still one, its look being the same. */
    static boolean holds(
            QuarantinePolicy policy,
            List<KeptLook> looks,
            List<Stay> stays,
            UUID room,
            LocalDate on,
            UUID look,
            String part,
            String cause) {
        return looks.stream()
                .filter(each -> each.id().equals(look))
                .filter(each -> hasCause(strict(policy, each).get(part), cause))
                .anyMatch(each -> stays.stream()
                        .filter(stay -> stay.room().equals(room) && stay.touches(on))
                        .anyMatch(stay -> each.localDate().equals(on)
                                || (stay.from().equals(on) && each.localDate().isBefore(on))));
    }

    static Optional<KeptLook> lastUpTo(List<KeptLook> looks, LocalDate day) {
        List<KeptLook> upTo =
                looks.stream().filter(look -> !look.localDate().isAfter(day)).toList();
        return upTo.isEmpty() ? Optional.empty() : Optional.of(upTo.get(upTo.size() - 1));
    }

    private static boolean hasCause(@Nullable Strict sign, String cause) {
        return sign != null && sign.cause().equals(cause);
    }

    private static Map<String, Strict> strict(QuarantinePolicy policy, KeptLook look) {
        Map<String, Strict> strict = new LinkedHashMap<>();
        Set<Route> explained = EnumSet.noneOf(Route.class);
        for (KeptLook.Sign sign : look.signs()) {
            Set<Route> routes = routes(sign.strictRoutes());
            explained.addAll(routes);
            policy.findCauseOfSign(sign.finding(), routes)
                    .ifPresent(cause -> strict.put(sign.finding(), new Strict(cause.id(), sign.label())));
        }
        Set<Route> together = routes(look.isolationRoutes());
        together.removeAll(explained);
        for (Route route : together) {
            policy.findCauseOfSign("", Set.of(route))
                    .ifPresent(cause -> strict.put(
                            ROUTE + route,
                            new Strict(cause.id(), "several signs together call for strict isolation, by " + route)));
        }
        return strict;
    }

    private static Set<Route> routes(Set<String> codes) {
        Set<Route> routes = EnumSet.noneOf(Route.class);
        codes.forEach(code -> Route.find(code).ifPresent(routes::add));
        return routes;
    }
}
