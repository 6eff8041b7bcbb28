package varanid.intake.visit;

import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Component;
import varanid.intake.animal.Animals;
import varanid.intake.diary.Diary;
import varanid.intake.diary.DiaryEntry;
import varanid.intake.report.Reports;
import varanid.intake.vet.Recommendation;
import varanid.intake.vet.Recommendations;
import varanid.intake.weight.WeightTrends;
import varanid.intake.weight.WeightWords;

/** What several parts of a summary read, read once for each summary. Looks and names have readers of their own. */
@Component
class Records {

    private final Animals animals;
    private final Diary diary;
    private final WeightTrends weights;
    private final Reports reports;
    private final Recommendations recommendations;

    Records(Animals animals, Diary diary, WeightTrends weights, Reports reports, Recommendations recommendations) {
        this.animals = animals;
        this.diary = diary;
        this.weights = weights;
        this.reports = reports;
        this.recommendations = recommendations;
    }

    Animals.Profile profile(Visit visit) {
        return visit.once(
                "profile",
                () -> animals.findProfile(visit.organisationId(), visit.animalId())
                        .orElseThrow());
    }

    /** Every entry that stands, oldest first. */
    List<DiaryEntry> diary(Visit visit) {
        return visit.once("diary", () -> diary.list(visit.organisationId(), visit.animalId()));
    }

    /** Empty where it was never weighed. */
    Optional<WeightWords> weights(Visit visit) {
        return visit.once(
                "weights",
                () -> weights.findWords(visit.organisationId(), visit.zone(), visit.animalId(), visit.today()));
    }

    /** What the people around it told. */
    varanid.intake.report.Standing told(Visit visit) {
        return visit.once("told", () -> reports.find(visit.organisationId(), visit.animalId()));
    }

    /** What holds: by a vet's answer, or worked out. */
    Recommendation holds(Visit visit) {
        return visit.once(
                "holds",
                () -> recommendations.find(visit.organisationId(), visit.zone(), visit.animalId(), visit.today()));
    }
}
