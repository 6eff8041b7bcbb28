package varanid.intake.visit;

import java.util.Collection;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import varanid.intake.vet.Recommendation;

/** How soon a vet and how strictly apart, as it stands: a vet's answer above what is worked out. */
@Component
class StandingReader {

    private static final String STRICT = "strict";

    private final Records records;
    private final HandOverTexts texts;

    StandingReader(Records records, HandOverTexts texts) {
        this.records = records;
        this.texts = texts;
    }

    Summary.Standing read(Visit visit) {
        Recommendation holds = records.holds(visit);
        if (holds.urgency().isEmpty()) {
            // Nobody can say that it may be near others.
            return new Summary.Standing(
                    null, texts.say("no-look-headline"), Basis.COMPUTED, STRICT, texts.say("standing-strict-plain"));
        }
        boolean byVet = holds.by() == Recommendation.By.VET;
        return new Summary.Standing(
                holds.urgency().get(),
                byVet || holds.callVet() ? holds.headline() : computed(holds),
                byVet ? Basis.VET : Basis.COMPUTED,
                holds.isolation(),
                isolation(holds.isolation(), holds.routes()));
    }

    private String computed(Recommendation holds) {
        String soon = texts.headline(holds.urgency().orElseThrow());
        String own = holds.headline();
        return own.isEmpty() || own.equals(soon) ? soon : soon + ". " + own;
    }

    String isolation(String code, Collection<String> routes) {
        if (!code.equals(STRICT)) {
            return texts.say("standing-standard");
        }
        return routes.isEmpty()
                ? texts.say("standing-strict-plain")
                : texts.say(
                        "standing-strict",
                        "routes",
                        routes.stream()
                                .sorted()
                                .map(route -> texts.wordOr("route", route))
                                .collect(Collectors.joining(", ")));
    }
}
