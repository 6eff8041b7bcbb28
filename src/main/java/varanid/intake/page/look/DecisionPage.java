package varanid.intake.page.look;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.servlet.ModelAndView;
import varanid.intake.animal.Animals;
import varanid.intake.assessment.Looks;
import varanid.intake.assessment.ReadLook;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.Role;
import varanid.intake.vet.Recommendation;
import varanid.intake.vet.Recommendations;
import varanid.intake.vet.VetAnswer;
import varanid.intake.visit.Heads;

/** What a look came to, under what holds for the animal now. */
@Controller
class DecisionPage {

    private final Animals animals;
    private final Looks looks;
    private final Heads heads;
    private final Recommendations recommendations;
    private final MessageSource texts;
    private final Clock clock;

    DecisionPage(
            Animals animals,
            Looks looks,
            Heads heads,
            Recommendations recommendations,
            MessageSource texts,
            Clock clock) {
        this.animals = animals;
        this.looks = looks;
        this.heads = heads;
        this.recommendations = recommendations;
        this.texts = texts;
        this.clock = clock;
    }

    @GetMapping("/animals/{animalId}/looks/{lookId}")
    ModelAndView decision(Caller caller, @PathVariable UUID animalId, @PathVariable UUID lookId, Locale locale) {
        UUID organisation = caller.organisationId();
        Animals.Newcomer animal =
                animals.find(organisation, animalId).orElseThrow(() -> ProblemException.notFound("animal"));
        ReadLook look =
                looks.findRead(organisation, animalId, lookId).orElseThrow(() -> ProblemException.notFound("look"));
        Instant now = clock.instant();
        LocalDate today = LocalDate.ofInstant(now, caller.zone());
        Heads.Head head = heads.read(organisation, caller.zone(), animal, now);
        Recommendation holds = recommendations.find(organisation, caller.zone(), animalId, today);
        Optional<UUID> latest = looks.findLatestRead(organisation, animalId, today)
                .map(last -> last.kept().id());
        Optional<UUID> correction = looks.findSuccessor(organisation, lookId);
        ModelAndView page = new ModelAndView("decision");
        page.addObject("sheets", List.of("look"));
        page.addObject("animal", animalId);
        page.addObject(
                "name",
                animal.name().or(animal::species).orElseGet(() -> texts.getMessage("look.nameless", null, locale)));
        page.addObject("head", head);
        page.addObject("urgency", head.urgency().orElse("routine"));
        page.addObject("headline", head.headline());
        page.addObject("byVet", holds.by() == Recommendation.By.VET || holds.isolationBy() == Recommendation.By.VET);
        page.addObject(
                "vets",
                Stream.concat(holds.standing().stream(), holds.unconfirmed().stream())
                        .map(VetSaid::of)
                        .toList());
        page.addObject("latest", latest.filter(lookId::equals).isPresent());
        page.addObject("latestPath", latest.map(id -> path(animalId, id)).orElse(null));
        page.addObject(
                "correctionPath", correction.map(id -> path(animalId, id)).orElse(null));
        page.addObject(
                "correctedPath", look.supersedes().map(id -> path(animalId, id)).orElse(null));
        page.addObject("reason", look.reason());
        page.addObject(
                "correctPath",
                caller.may(Role.KEEPER) && correction.isEmpty() ? LookPage.correctionPath(animalId, lookId) : null);
        // The browser that made the look need not keep its copy any longer.
        page.addObject("formKey", look.formKey().orElse(null));
        Decision decision = Decision.of(look, caller.zone(), locale);
        page.addObject("decision", decision);
        page.addObject(
                "changes",
                looks.findReadBefore(organisation, look)
                        .map(before -> Changes.of(before, look, caller.zone(), locale))
                        .orElse(null));
        page.addObject("routes", Decision.routes(look.edition(), holds.routes()));
        return page;
    }

    /**
     * What a vet wrote, word for word.
     *
     * @param by name and practice, as stated
     */
    public record VetSaid(String by, boolean confirmed, List<String> texts) {

        static VetSaid of(VetAnswer answer) {
            return new VetSaid(
                    answer.writer().name() + ", " + answer.writer().practice(),
                    answer.confirmed(),
                    Stream.of(answer.instructions(), answer.words())
                            .flatMap(Optional::stream)
                            .toList());
        }
    }

    static String path(UUID animalId, UUID lookId) {
        return "/animals/" + animalId + "/looks/" + lookId;
    }
}
