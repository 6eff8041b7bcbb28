package varanid.intake.visit;

import java.util.Collection;
import java.util.Optional;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import varanid.intake.assessment.ReadLook;

/** How soon a vet and how strictly apart, as it stands. */
@Component
class StandingReader {

    private static final String STRICT = "strict";

    private final LatestLook looks;
    private final HandOverTexts texts;

    StandingReader(LatestLook looks, HandOverTexts texts) {
        this.looks = looks;
        this.texts = texts;
    }

    Summary.Standing read(Visit visit) {
        Optional<ReadLook> look = looks.find(visit);
        return look.map(it -> new Summary.Standing(
                        it.kept().urgency(),
                        headline(it),
                        Basis.COMPUTED,
                        it.kept().isolation().orElse(STRICT),
                        isolation(
                                it.kept().isolation().orElse(STRICT), it.kept().isolationRoutes())))
                // Nobody can say that it may be near others.
                .orElseGet(() -> new Summary.Standing(
                        null,
                        texts.say("no-look-headline"),
                        Basis.COMPUTED,
                        STRICT,
                        texts.say("standing-strict-plain")));
    }

    private String headline(ReadLook look) {
        String soon = texts.headline(look.kept().urgency());
        String own = look.document().at("/urgency/headline").stringValue("");
        return own.isEmpty() ? soon : soon + ". " + own;
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
