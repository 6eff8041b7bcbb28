package varanid.intake.quarantine;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import varanid.intake.animal.Animals;
import varanid.intake.platform.id.RowKey;

/** A death concerns all that came together. */
@Component
class Cohorts {

    private final Animals animals;
    private final Whereabouts whereabouts;
    private final Rooms rooms;
    private final QuarantinePolicy policy;

    Cohorts(Animals animals, Whereabouts whereabouts, Rooms rooms, QuarantinePolicy policy) {
        this.animals = animals;
        this.whereabouts = whereabouts;
        this.rooms = rooms;
        this.policy = policy;
    }

    /** What the death of an animal is for those it came with; nothing where it came with none. */
    Optional<CohortView> afterDeath(UUID organisationId, Animals.Newcomer dead) {
        return dead.consignmentId().map(consignment -> view(organisationId, consignment));
    }

    private CohortView view(UUID organisationId, UUID consignment) {
        int deaths = 0;
        int unexplained = 0;
        List<CohortView.MemberView> others = new ArrayList<>();
        for (Animals.Newcomer member : animals.listOfConsignment(organisationId, consignment)) {
            Optional<PlacementRow> last = whereabouts.findLast(organisationId, member.id());
            if (last.filter(row -> Because.DIED.code().equals(row.because)).isPresent()) {
                deaths++;
                unexplained += Boolean.FALSE.equals(last.get().explained) ? 1 : 0;
            } else if (last.filter(row -> !row.isPlaced()).isEmpty()) {
                @Nullable UUID room = last.map(row -> row.roomId).orElse(null);
                others.add(new CohortView.MemberView(
                        member.id(),
                        member.name().orElse(null),
                        room,
                        room == null
                                ? null
                                : rooms.findById(new RowKey(organisationId, room))
                                        .map(RoomRow::name)
                                        .orElse(null)));
            }
        }
        QuarantinePolicy.CohortDeath rule = policy.deaths().cohort();
        boolean asap = deaths >= rule.asapFromDeaths() || unexplained >= rule.asapFromUnexplained();
        List<String> advice = new ArrayList<>();
        if (asap) {
            advice.add(rule.asapText());
        }
        advice.add(rule.text());
        return new CohortView(consignment, deaths, unexplained, asap ? "asap" : null, advice, others, rule.source());
    }
}
