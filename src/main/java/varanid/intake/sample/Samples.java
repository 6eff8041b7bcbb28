package varanid.intake.sample;

import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** What other features may know about an animal's samples. */
@Service
public class Samples {

    private final SampleStore store;

    Samples(SampleStore store) {
        this.store = store;
    }

    /** The animal's samples with what they come to now, in the order they were taken; none for an unknown animal. */
    @Transactional(readOnly = true)
    public List<KeptSample> list(UUID organisationId, UUID animalId) {
        return store.listStanding(organisationId, animalId).stream()
                .sorted(Comparator.comparing(sample -> sample.row().takenAt()))
                .map(SampleFile::kept)
                .toList();
    }
}
