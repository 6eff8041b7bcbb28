package varanid.intake.visit;

import java.util.List;
import org.springframework.stereotype.Component;

/** What a vet who has answered could not have seen, and that cannot wait. */
@Component
class NewSinceAlert implements AlertReader {

    private final Records records;

    NewSinceAlert(Records records) {
        this.records = records;
    }

    @Override
    public List<Summary.Alert> read(Visit visit) {
        return records.holds(visit).alert().map(text -> new Summary.Alert("new-since-the-vets-answer", text)).stream()
                .toList();
    }
}
