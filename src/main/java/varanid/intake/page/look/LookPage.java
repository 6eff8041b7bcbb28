package varanid.intake.page.look;

import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.springframework.context.MessageSource;
import org.springframework.core.io.Resource;
import org.springframework.core.io.support.PathMatchingResourcePatternResolver;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;
import varanid.intake.animal.Animals;
import varanid.intake.assessment.Assessments;
import varanid.intake.assessment.Looks;
import varanid.intake.assessment.ReadLook;
import varanid.intake.assessment.SignWords;
import varanid.intake.checklist.Catalogue;
import varanid.intake.checklist.Edition;
import varanid.intake.page.SeeOther;
import varanid.intake.platform.time.ReaderDates;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.Once;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.ProblemType;
import varanid.intake.platform.web.Reply;
import varanid.intake.platform.web.Role;
import varanid.intake.platform.web.SentForm;

/** Looking an animal over. */
@Controller
class LookPage {

    private static final Pattern SIZE = Pattern.compile("<svg[^>]* width=\"(\\d+)\" height=\"(\\d+)\"");

    private final Catalogue catalogue;
    private final Animals animals;
    private final Looks looks;
    private final Assessments assessments;
    private final Once once;
    private final MessageSource texts;
    private final Clock clock;
    private final Map<String, Sheet.Drawing> drawings;

    LookPage(
            Catalogue catalogue,
            Animals animals,
            Looks looks,
            Assessments assessments,
            Once once,
            MessageSource texts,
            Clock clock) {
        this.catalogue = catalogue;
        this.animals = animals;
        this.looks = looks;
        this.assessments = assessments;
        this.once = once;
        this.texts = texts;
        this.clock = clock;
        this.drawings = listDrawings();
    }

    @GetMapping("/animals/{animalId}/look")
    ModelAndView look(Caller caller, @PathVariable UUID animalId, Locale locale) {
        caller.require(Role.KEEPER);
        LookForm form = new LookForm(SentForm.empty(), edition(SentForm.empty()), null);
        return page(HttpStatus.OK, caller, animal(caller, animalId), form, Map.of(), locale);
    }

    @PostMapping("/animals/{animalId}/look")
    ModelAndView keep(Caller caller, @PathVariable UUID animalId, HttpServletRequest request, Locale locale) {
        caller.require(Role.KEEPER);
        SentForm sent = SentForm.of(request);
        return keep(caller, animal(caller, animalId), new LookForm(sent, edition(sent), null), locale);
    }

    @GetMapping("/animals/{animalId}/looks/{lookId}/correction")
    ModelAndView correction(Caller caller, @PathVariable UUID animalId, @PathVariable UUID lookId, Locale locale) {
        caller.require(Role.KEEPER);
        LookForm form = LookForm.correcting(look(caller, animalId, lookId));
        return page(HttpStatus.OK, caller, animal(caller, animalId), form, Map.of(), locale);
    }

    @PostMapping("/animals/{animalId}/looks/{lookId}/correction")
    ModelAndView correct(
            Caller caller,
            @PathVariable UUID animalId,
            @PathVariable UUID lookId,
            HttpServletRequest request,
            Locale locale) {
        caller.require(Role.KEEPER);
        SentForm sent = SentForm.of(request);
        LookForm form = new LookForm(sent, edition(sent), look(caller, animalId, lookId));
        return keep(caller, animal(caller, animalId), form, locale);
    }

    private ModelAndView keep(Caller caller, Animals.Newcomer animal, LookForm form, Locale locale) {
        JsonRequest look = JsonRequest.ofForm("POST " + path(animal.id(), form), form.document(), null);
        try {
            // Without a key of the request: the form's own outlasts the session.
            return SeeOther.path(Objects.requireNonNull(once.perform(caller, look, () -> {
                        UUID kept = assessments.keep(caller, animal.id(), look);
                        return new Reply(303, Map.of("Location", DecisionPage.path(animal.id(), kept)), Map.of());
                    })
                    .getHeaders()
                    .getFirst("Location")));
        } catch (ProblemException e) {
            HttpStatus status = HttpStatus.UNPROCESSABLE_CONTENT;
            if (e.type().equals(ProblemType.KEY_REUSED)) {
                // Somebody went back and changed it. That is another look, if it is meant.
                return page(status, caller, animal, form.withoutKey(), whole("look.sent-before", locale), locale);
            } else if (e.type().equals(ProblemType.CONFLICT) && form.corrects().isPresent()) {
                return page(HttpStatus.CONFLICT, caller, animal, form, whole("correct.meanwhile", locale), locale);
            } else if (e.type().equals(ProblemType.INVALID_REQUEST)) {
                return page(status, caller, animal, form, form.faults(e.faults()), locale);
            }
            throw e;
        }
    }

    private Map<String, List<String>> whole(String text, Locale locale) {
        return Map.of("", List.of(text(text, locale)));
    }

    private ReadLook look(Caller caller, UUID animalId, UUID lookId) {
        return looks.findRead(caller.organisationId(), animalId, lookId)
                .orElseThrow(() -> ProblemException.notFound("look"));
    }

    private static String path(UUID animalId, LookForm form) {
        return form.corrects()
                .map(look -> correctionPath(animalId, look.kept().id()))
                .orElseGet(() -> path(animalId));
    }

    static String correctionPath(UUID animalId, UUID lookId) {
        return DecisionPage.path(animalId, lookId) + "/correction";
    }

    static String path(UUID animalId) {
        return "/animals/" + animalId + "/look";
    }

    private Animals.Newcomer animal(Caller caller, UUID animalId) {
        return animals.find(caller.organisationId(), animalId).orElseThrow(() -> ProblemException.notFound("animal"));
    }

    /** The one the form was made from; else the newest. */
    private Edition edition(SentForm form) {
        return catalogue.list().stream()
                .filter(Edition::published)
                .filter(each -> form.values(LookForm.CHECKLIST).contains(each.id())
                        && form.values(LookForm.VERSION).contains(String.valueOf(each.version())))
                .findFirst()
                .or(() -> catalogue.list().stream()
                        .filter(Edition::published)
                        .findFirst()
                        .flatMap(first -> catalogue.findNewest(first.id())))
                .orElseThrow(() -> new IllegalStateException("no checklist is published"));
    }

    private ModelAndView page(
            HttpStatus status,
            Caller caller,
            Animals.Newcomer animal,
            LookForm form,
            Map<String, List<String>> faults,
            Locale locale) {
        LocalDate today = LocalDate.ofInstant(clock.instant(), caller.zone());
        Optional<ReadLook> last =
                form.corrects().or(() -> looks.findLatestRead(caller.organisationId(), animal.id(), today));
        ModelAndView page = new ModelAndView("look", status);
        page.addObject("sheets", List.of("look"));
        page.addObject("scripts", List.of("look"));
        page.addObject("animal", animal.id());
        page.addObject("name", animal.name().or(animal::species).orElse(text("look.nameless", locale)));
        page.addObject("person", caller.personId());
        page.addObject("lifeStage", animal.lifeStage().code());
        page.addObject("origin", animal.steeringOrigin());
        page.addObject("originTold", origin(form.edition(), animal.steeringOrigin()));
        page.addObject(
                "last",
                last.map(look ->
                                ReaderDates.of(locale).weekdayMoment(look.kept().occurredAt(), caller.zone()))
                        .orElse(null));
        page.addObject(
                "sheet",
                Sheet.of(
                        form.edition(),
                        form,
                        faults,
                        last,
                        drawings,
                        new Sheet.Words(text("look.unseen", locale), text("look.not-yet", locale))));
        page.addObject("action", path(animal.id(), form));
        page.addObject("corrects", form.corrects().map(look -> look.kept().id()).orElse(null));
        page.addObject(
                "occurredAt",
                form.corrects().map(look -> look.kept().occurredAt()).orElse(null));
        page.addObject(
                "correctionPath",
                form.corrects()
                        .flatMap(look -> looks.findSuccessor(
                                caller.organisationId(), look.kept().id()))
                        .map(id -> DecisionPage.path(animal.id(), id))
                        .orElse(null));
        page.addObject("faults", faults);
        page.addObject("form", new Typed(form));
        page.addObject("now", clock.instant());
        page.addObject("key", form.key().orElseGet(UUID::randomUUID));
        return page;
    }

    /** What the checklist calls a source code, else the code. */
    private static String origin(Edition edition, String code) {
        return edition.checklist().draft().attributes().stream()
                .filter(attribute -> attribute.id().equals("origin"))
                .flatMap(attribute -> attribute.values().stream())
                .filter(value -> value.code().equals(code))
                .flatMap(value -> Stream.ofNullable(value.label()))
                .findFirst()
                .map(label -> SignWords.small(label))
                .orElse(code);
    }

    private String text(String key, Locale locale) {
        return texts.getMessage(key, null, locale);
    }

    private static Map<String, Sheet.Drawing> listDrawings() {
        try {
            Map<String, Sheet.Drawing> drawings = new HashMap<>();
            for (Resource file :
                    new PathMatchingResourcePatternResolver().getResources("classpath*:/static/page/drawings/*.svg")) {
                String name = Objects.requireNonNull(file.getFilename());
                Matcher size = SIZE.matcher(file.getContentAsString(StandardCharsets.UTF_8));
                if (!size.find()) {
                    throw new IllegalStateException("the drawing " + name + " has no width and height");
                }
                drawings.put(
                        name,
                        new Sheet.Drawing(name, Integer.parseInt(size.group(1)), Integer.parseInt(size.group(2))));
            }
            return Map.copyOf(drawings);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What stands in the fields that belong to no question. */
    public record Typed(String skin, String skinUnit, boolean skinConfirmed, String note, String reason) {
        Typed(LookForm form) {
            this(
                    form.typed(LookForm.SKIN),
                    form.typed(LookForm.SKIN_UNIT),
                    !form.typed(LookForm.SKIN_CONFIRMED).isBlank(),
                    form.typed(LookForm.NOTE),
                    form.typed(LookForm.REASON));
        }
    }
}
