package varanid.intake.weight;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import varanid.intake.animal.Animals;
import varanid.intake.animal.LifeStage;
import varanid.intake.condition.BodyConditionView;
import varanid.intake.condition.BodyConditions;
import varanid.intake.condition.Reading;

/** What the weighings of an animal say. */
@Service
public class WeightTrends {

    private final Weighings weighings;
    private final Animals animals;
    private final BodyConditions conditions;
    private final WeightRules rules;

    WeightTrends(Weighings weighings, Animals animals, BodyConditions conditions, WeightReference reference) {
        this.weighings = weighings;
        this.animals = animals;
        this.conditions = conditions;
        this.rules = reference.rules();
    }

    /**
     * The trend as of a day, for the life stage that is recorded; empty where there is no such animal or no weighing.
     *
     * @param zone the organisation's: dates of the registration's weights are meant there
     * @param asOf later weighings are left aside
     */
    @Transactional(readOnly = true)
    public Optional<WeightTrend> find(UUID organisationId, ZoneId zone, UUID animalId, LocalDate asOf) {
        return animals.findFirstReadings(organisationId, animalId)
                .flatMap(animal -> WeightTrend.find(
                        weighings.listStanding(organisationId, zone, animalId, asOf).stream()
                                .map(KnownWeighing::weighing)
                                .toList(),
                        animal.lifeStage().code(),
                        asOf,
                        rules));
    }

    /**
     * What the weighings up to a moment answer to the checklist; empty where there is none.
     *
     * @param upTo when it was looked at: what was weighed later that day does not answer for it
     * @param lifeStage the code that the look goes by
     */
    @Transactional(readOnly = true)
    public Optional<AnswerFromWeighings> findAnswer(
            UUID organisationId, ZoneId zone, UUID animalId, Instant upTo, String lifeStage) {
        LocalDate asOf = LocalDate.ofInstant(upTo, zone);
        List<KnownWeighing> known = weighings.listStanding(organisationId, zone, animalId, asOf).stream()
                .filter(each -> !each.weighing().at().isAfter(upTo))
                .toList();
        return WeightTrend.find(known.stream().map(KnownWeighing::weighing).toList(), lifeStage, asOf, rules)
                .map(trend -> new TrendShown(trend, known, rules).answer());
    }

    /** The trend as it is shown; empty where there is no such animal. */
    @Transactional(readOnly = true)
    Optional<WeightTrendView> findView(UUID organisationId, ZoneId zone, UUID animalId, LocalDate asOf) {
        return animals.findFirstReadings(organisationId, animalId).map(animal -> {
            LifeStage lifeStage = animal.lifeStage();
            List<KnownWeighing> known = weighings.listStanding(organisationId, zone, animalId, asOf);
            return WeightTrend.find(known.stream().map(KnownWeighing::weighing).toList(), lifeStage.code(), asOf, rules)
                    .map(trend -> new TrendShown(trend, known, rules)
                            .view(asOf, lifeStage, condition(organisationId, zone, animalId, asOf, lifeStage, known)))
                    .orElseGet(() -> WeightTrendView.withoutWeighing(asOf, lifeStage, rules));
        });
    }

    private BodyConditionView condition(
            UUID organisationId,
            ZoneId zone,
            UUID animalId,
            LocalDate asOf,
            LifeStage lifeStage,
            List<KnownWeighing> known) {
        List<BodyConditions.MassOn> masses = known.stream()
                .map(KnownWeighing::weighing)
                .map(each -> new BodyConditions.MassOn(
                        each.day(),
                        Reading.of(
                                each.mass().grams(),
                                each.resolution() == null
                                        ? null
                                        : each.resolution().step(),
                                each.mass().value()),
                        each.wet() || each.isFedWithin(rules.heavyFor())))
                .toList();
        return conditions.get(organisationId, zone, animalId, asOf, lifeStage.code(), masses);
    }

    /** What the weighings say in words; empty where there is no such animal or it was never weighed. */
    @Transactional(readOnly = true)
    public Optional<WeightWords> findWords(UUID organisationId, ZoneId zone, UUID animalId, LocalDate asOf) {
        return findView(organisationId, zone, animalId, asOf)
                .filter(view -> view.latest() != null)
                .map(view -> WeightWords.of(
                        view,
                        weighings.listStanding(organisationId, zone, animalId, asOf).stream()
                                .map(KnownWeighing::weighing)
                                .toList(),
                        rules));
    }
}
