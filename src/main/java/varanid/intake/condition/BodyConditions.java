package varanid.intake.condition;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;
import varanid.intake.animal.LengthReading;
import varanid.intake.condition.BodyConditionView.IndexPoint;
import varanid.intake.condition.BodyConditionView.LineView;
import varanid.intake.condition.BodyConditionView.MassForLengthView;
import varanid.intake.condition.BodyConditionView.ScaledMassIndexView;
import varanid.intake.condition.ConditionRules.Said;
import varanid.intake.condition.Lengths.MeasuredLength;

/** Sets an animal's masses against its lengths. */
@Service
public class BodyConditions {

    private final Lengths lengths;
    private final ConditionRules rules;

    BodyConditions(Lengths lengths, ConditionReference reference) {
        this.lengths = lengths;
        this.rules = reference.rules();
    }

    /**
     * A mass on a day.
     *
     * @param grams with what the scale may hide
     * @param mayBeHeavy it had eaten shortly before, or was wet
     */
    public record MassOn(LocalDate day, Reading grams, boolean mayBeHeavy) {}

    /**
     * What mass and length say together as of a day.
     *
     * @param lifeStage its code; a young animal outgrows a length sooner
     * @param masses one or more, oldest first; none later than the day
     */
    public BodyConditionView get(
            UUID organisationId, ZoneId zone, UUID animalId, LocalDate asOf, String lifeStage, List<MassOn> masses) {
        List<MeasuredLength> bodies = lengths.list(organisationId, zone, animalId, asOf).stream()
                .filter(each -> each.reading().of() == LengthReading.Part.SNOUT_VENT)
                .filter(each -> each.reading().millimetres().signum() > 0)
                .toList();
        return compare(masses, bodies, lifeStage, rules);
    }

    static BodyConditionView compare(
            List<MassOn> masses, List<MeasuredLength> bodies, String lifeStage, ConditionRules rules) {
        MassOn latest = masses.get(masses.size() - 1);
        Optional<MeasuredLength> body = nearest(bodies, latest.day(), rules.daysApart(lifeStage));
        Optional<MassForLength> found =
                body.flatMap(length -> MassForLength.find(latest.grams(), reading(length), rules));
        Said why = bodies.isEmpty() ? Said.NO_LENGTH : body.isEmpty() ? Said.OLD_LENGTH : Said.IMPOSSIBLE_LENGTH;
        return new BodyConditionView(
                found.map(it -> view(it, latest, body.orElseThrow(), rules)).orElse(null),
                found.isPresent() ? null : rules.say(why),
                index(masses, bodies, rules),
                rules.notice());
    }

    private static MassForLengthView view(MassForLength found, MassOn mass, MeasuredLength body, ConditionRules rules) {
        return new MassForLengthView(
                found.place().code(),
                rules.question(found.place()),
                mass.grams().shown(),
                reading(body).shown(),
                mass.day(),
                body.day(),
                rounded(found.lowestGrams()),
                rounded(found.highestGrams()),
                found.expected().stream()
                        .map(each -> new LineView(
                                each.line().id(),
                                rounded(each.grams()),
                                rounded(each.relativeCondition()),
                                each.line().about()))
                        .toList());
    }

    // ---- the animal against itself

    private static ScaledMassIndexView index(List<MassOn> masses, List<MeasuredLength> bodies, ConditionRules rules) {
        record Pair(MeasuredLength body, MassOn mass) {}
        List<Pair> pairs = new ArrayList<>();
        LocalDate before = LocalDate.MIN;
        for (MeasuredLength body : bodies) {
            Optional<MassOn> mass =
                    nearestMass(masses, body.day(), rules.index().daysApart());
            // one point a day, and no weighing twice: a second length beside the same mass tells nothing
            if (mass.isPresent() && mass.get().day().isAfter(before)) {
                pairs.add(new Pair(body, mass.get()));
                before = mass.get().day();
            }
        }
        if (pairs.size() < 2) {
            return none(Said.INDEX_TOO_FEW, rules);
        }
        double reference = reading(pairs.get(pairs.size() - 1).body()).shown();
        List<IndexPoint> points = pairs.stream()
                .filter(pair -> ScaledMassIndex.makesSense(reading(pair.body()).shown(), reference, rules))
                .map(pair -> new IndexPoint(
                        pair.body().day(),
                        reading(pair.body()).shown(),
                        pair.mass().day(),
                        pair.mass().grams().shown(),
                        rounded(ScaledMassIndex.grams(
                                pair.mass().grams().shown(),
                                reading(pair.body()).shown(),
                                reference,
                                rules.index().slope())),
                        pair.mass().mayBeHeavy()))
                .toList();
        return points.size() < 2
                ? none(Said.INDEX_TOO_DIFFERENT, rules)
                : new ScaledMassIndexView(
                        true,
                        rules.say(Said.INDEX),
                        reference,
                        BigDecimal.valueOf(rules.index().slope()),
                        points);
    }

    private static ScaledMassIndexView none(Said why, ConditionRules rules) {
        return new ScaledMassIndexView(false, rules.say(why), null, null, List.of());
    }

    // ---- near in time

    /** Of two as near, the later. */
    private static Optional<MeasuredLength> nearest(List<MeasuredLength> bodies, LocalDate day, int daysApart) {
        return bodies.stream()
                .filter(each -> apart(each.day(), day) <= daysApart)
                .min(Comparator.comparing((MeasuredLength each) -> apart(each.day(), day))
                        .thenComparing(each -> each.reading().occurredAt(), Comparator.reverseOrder()));
    }

    /** Of two as near, one that is not heavy, and then the later. */
    private static Optional<MassOn> nearestMass(List<MassOn> masses, LocalDate day, int daysApart) {
        return masses.stream()
                .filter(each -> apart(each.day(), day) <= daysApart)
                .min(Comparator.comparing((MassOn each) -> apart(each.day(), day))
                        .thenComparing(MassOn::mayBeHeavy)
                        .thenComparing(MassOn::day, Comparator.reverseOrder()));
    }

    private static long apart(LocalDate one, LocalDate other) {
        return Math.abs(ChronoUnit.DAYS.between(one, other));
    }

    private static Reading reading(MeasuredLength length) {
        return Reading.of(
                length.reading().millimetres(),
                length.reading().resolution(),
                length.reading().value());
    }

    /** Four figures after the point: more than any scale or ruler here knows. */
    private static double rounded(double value) {
        return Math.round(value * 10_000) / 10_000.0;
    }
}
