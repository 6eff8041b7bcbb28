package varanid.intake.visit;

import java.util.List;
import org.springframework.stereotype.Component;
import varanid.intake.vet.Recommendations;

/** What a vet who has answered could not have seen, and that cannot wait. */
@Component
class NewSinceAlert implements AlertReader {

    private final Recommendations recommendations;

    NewSinceAlert(Recommendations recommendations) {
        this.recommendations = recommendations;
    }

    @Override
    public List<Summary.Alert> read(Visit visit) {
        return recommendations
                .find(visit.organisationId(), visit.zone(), visit.animalId(), visit.today())
                .alert()
                .map(text -> new Summary.Alert("new-since-the-vets-answer", text))
                .stream()
                .toList();
    }
}
