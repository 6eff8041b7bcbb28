package varanid.intake.vet;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import varanid.intake.assessment.Looks;

/** What holds for an animal: how soon a vet, how strictly apart, and who says so. */
@Service
public class Recommendations {

    private final VetAnswers answers;
    private final Looks looks;
    private final Words words;

    Recommendations(VetAnswers answers, Looks looks, Words words) {
        this.answers = answers;
        this.looks = looks;
        this.words = words;
    }

    /**
     * What holds on a day, by the looks and answers up to and including it.
     *
     * @param zone the organisation's: dates are meant there
     */
    @Transactional(readOnly = true)
    public Recommendation find(UUID organisationId, ZoneId zone, UUID animalId, LocalDate asOf) {
        List<VetAnswer> given = answers.list(organisationId, animalId);
        // Without an answer only the last look counts; the others need not be read.
        List<LookFacts> seen = given.isEmpty()
                ? looks.findLatestRead(organisationId, animalId, asOf).stream()
                        .map(LookFacts::of)
                        .toList()
                : ever(organisationId, animalId);
        return new RecommendationCourse(words, zone, seen, given).on(asOf);
    }

    /** The same for one day after another, read once. */
    @Transactional(readOnly = true)
    public RecommendationCourse read(UUID organisationId, ZoneId zone, UUID animalId) {
        return new RecommendationCourse(
                words, zone, ever(organisationId, animalId), answers.list(organisationId, animalId));
    }

    /** Everything that vets answered about an animal, the one given first comes first. */
    @Transactional(readOnly = true)
    public List<VetAnswer> listAnswers(UUID organisationId, UUID animalId) {
        return answers.list(organisationId, animalId);
    }

    /** The animals of which an answer names the day of a next visit, that day or a later one. */
    @Transactional(readOnly = true)
    public List<UUID> listAnimalsToVisit(UUID organisationId, LocalDate from) {
        return answers.listAnimalsToVisit(organisationId, from);
    }

    /** One answer. */
    @Transactional(readOnly = true)
    public Optional<VetAnswer> findAnswer(UUID organisationId, UUID animalId, UUID answerId) {
        return answers.find(organisationId, animalId, answerId);
    }

    private List<LookFacts> ever(UUID organisationId, UUID animalId) {
        return looks.listReadEver(organisationId, animalId).stream()
                .map(LookFacts::of)
                .toList();
    }
}
