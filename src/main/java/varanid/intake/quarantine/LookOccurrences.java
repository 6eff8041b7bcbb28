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
 * Signs of one look with the same cause are one occurrence: a vet is asked about them once.
 */
final class LookOccurrences {

    private static final String ROUTE = "route:";

    /** Between the parts of one occurrence; no finding's id has one. */
    private static final String AND = " ";

    private LookOccurrences() {}

    /**
     * An occurrence.
     *
     * @param part its findings, or the route for which several signs only together call for strict isolation
     * @param label in the checklist's words
     */
    record Sign(UUID room, LocalDate on, UUID look, String part, String cause, String label) {

        /** Whether what was recorded with that part is about all of this. */
        boolean isIn(@Nullable String recorded) {
            return recorded != null && parts(recorded).containsAll(parts(part));
        }
    }

    private static List<String> parts(String part) {
        return List.of(part.split(AND));
    }

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
                    Map<String, Strict> fresh = strict(policy, look);
                    fresh.entrySet()
                            .removeIf(sign -> hasCause(
                                    known.get(sign.getKey()), sign.getValue().cause()));
                    signs.addAll(byCause(stay.room(), look.localDate(), look, fresh));
                }
                before = look;
            }
        }
        return signs;
    }

    /** Those that it brings along on being placed. */
    static List<Sign> ofArrival(QuarantinePolicy policy, List<KeptLook> looks, Stay stay) {
        return lastUpTo(looks, stay.from())
                .map(look -> byCause(stay.room(), stay.from(), look, strict(policy, look)))
                .orElse(List.of());
    }

    private static List<Sign> byCause(UUID room, LocalDate on, KeptLook look, Map<String, Strict> strict) {
        Map<String, Sign> signs = new LinkedHashMap<>();
        strict.forEach((part, sign) -> signs.merge(
                sign.cause(),
                new Sign(room, on, look.id(), part, sign.cause(), sign.label()),
                (all, one) -> new Sign(
                        room,
                        on,
                        look.id(),
                        all.part() + AND + one.part(),
                        one.cause(),
                        all.label() + "; " + one.label())));
        return List.copyOf(signs.values());
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
                .filter(each -> {
                    Map<String, Strict> strict = strict(policy, each);
                    return parts(part).stream().allMatch(one -> hasCause(strict.get(one), cause));
                })
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
                    .ifPresent(cause -> strict.put(sign.finding(), new Strict(cause.id(), sign.told())));
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
