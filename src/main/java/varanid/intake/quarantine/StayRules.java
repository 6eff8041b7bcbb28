package varanid.intake.quarantine;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.springframework.stereotype.Component;
import varanid.intake.animal.Animals;
import varanid.intake.assessment.KeptLook;

/** How long an animal is kept apart at least, by what is recorded of it. */
@Component
class StayRules {

    private static final String HOUSE = "rule of the house";

    private final QuarantinePolicy policy;
    private final HouseRules house;

    StayRules(QuarantinePolicy policy, HouseRules house) {
        this.policy = policy;
        this.house = house;
    }

    /**
     * What it needs on being placed.
     *
     * @param looks those that count: of each the isolation
     */
    MinimumStay needs(UUID organisationId, Animals.Newcomer animal, List<KeptLook> looks) {
        Origin origin = Origins.of(animal);
        MinimumStay stay = policy.minimumStay(origin, isolation(looks), routes(looks));
        return Optional.ofNullable(house.days(organisationId).get(origin))
                .filter(days -> days >= stay.floorDays())
                .map(days -> stay.lengthenedTo(days, "the organisation keeps such animals (" + origin + ") this long"))
                .orElse(stay);
    }

    /** The same as things are known now, with the rule of the house that held when it was placed. */
    MinimumStay needsNow(MinimumStay before, Animals.Newcomer animal, List<KeptLook> looks) {
        MinimumStay stay = policy.minimumStay(Origins.of(animal), isolation(looks), routes(looks));
        return before.reasons().stream()
                .filter(reason -> reason.source().equals(HOUSE) && reason.days() >= stay.floorDays())
                .findFirst()
                .map(reason -> stay.lengthenedTo(reason.days(), reason.reason()))
                .orElse(stay);
    }

    /** Whether the origin is still the one that the stay was worked out from. */
    boolean isForOriginOf(MinimumStay stay, Animals.Newcomer animal) {
        return stay.reasons()
                .containsAll(policy.minimumStay(Origins.of(animal), Isolation.STANDARD, Set.of())
                        .reasons());
    }

    static Isolation isolation(List<KeptLook> looks) {
        return looks.stream()
                        .anyMatch(look -> look.isolation()
                                .filter(Isolation.STRICT.code()::equals)
                                .isPresent())
                ? Isolation.STRICT
                : Isolation.STANDARD;
    }

    /** How that which is found or suspected travels; keeping a group apart as a group is no route. */
    static Set<Route> routes(List<KeptLook> looks) {
        Set<Route> routes = EnumSet.noneOf(Route.class);
        looks.forEach(look -> routes.addAll(routesOf(look.isolationRoutes())));
        return routes;
    }

    static Set<Route> routesOf(Set<String> codes) {
        Set<Route> routes = EnumSet.noneOf(Route.class);
        codes.forEach(code -> Route.find(code).ifPresent(routes::add));
        return routes;
    }
}
