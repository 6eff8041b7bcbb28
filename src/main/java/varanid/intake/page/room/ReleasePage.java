package varanid.intake.page.room;

import jakarta.servlet.http.HttpServletRequest;
import java.time.Clock;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Consumer;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;
import varanid.intake.animal.Animals;
import varanid.intake.page.SeeOther;
import varanid.intake.page.SentForms;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.Role;
import varanid.intake.platform.web.SentForm;
import varanid.intake.quarantine.FollowUp;
import varanid.intake.quarantine.FollowUps;
import varanid.intake.quarantine.QuarantineRecords;
import varanid.intake.quarantine.QuarantineReplies;
import varanid.intake.quarantine.ReviewView;
import varanid.intake.quarantine.ReviewView.ConditionView;

/**
 * What speaks for and against ending the quarantine of an animal, what a vet and an authority say, and the decision. A
 * program can end one against open conditions, with reasons; the page cannot.
 */
@Controller
class ReleasePage {

    private static final String PATH = "/animals/{animalId}/release";
    private static final String MET = "met";

    private static final Map<String, String> APPROVAL = Map.of("#/note", "vetNote", "#/approves", "approval");
    private static final Map<String, String> HOLD = Map.of("#/on", "holdOn");
    private static final Map<String, String> DECISION =
            Map.of("#/roomId", "roomId", "#/note", "releaseNote", "#", "release");

    private final QuarantineReplies replies;
    private final QuarantineRecords records;
    private final FollowUps followUps;
    private final Animals animals;
    private final SentForms forms;
    private final Clock clock;

    ReleasePage(
            QuarantineReplies replies,
            QuarantineRecords records,
            FollowUps followUps,
            Animals animals,
            SentForms forms,
            Clock clock) {
        this.replies = replies;
        this.records = records;
        this.followUps = followUps;
        this.animals = animals;
        this.forms = forms;
        this.clock = clock;
    }

    /** @param kept what was just kept: approval, hold or released */
    @GetMapping(PATH)
    ModelAndView review(Caller caller, @PathVariable UUID animalId, @RequestParam(defaultValue = "") String kept) {
        ModelAndView page = page(HttpStatus.OK, caller, animalId, SentForm.empty(), Map.of(), false);
        page.addObject("kept", kept);
        return page;
    }

    @PostMapping(PATH + "/approvals")
    ModelAndView approve(Caller caller, @PathVariable UUID animalId, HttpServletRequest sent) {
        caller.require(Role.CLINICIAN);
        SentForm form = SentForm.of(sent);
        ObjectNode approval = JsonNodeFactory.instance.objectNode();
        form.find("approves").ifPresent(word -> {
            if (word.equals("true") || word.equals("false")) {
                approval.put("approves", word.equals("true"));
            }
        });
        form.find("vetNote").ifPresent(note -> approval.put("note", note));
        return keep(
                caller,
                animalId,
                "approval",
                form,
                approval,
                APPROVAL,
                request -> records.keepApproval(caller, animalId, request));
    }

    @PostMapping(PATH + "/holds")
    ModelAndView hold(Caller caller, @PathVariable UUID animalId, HttpServletRequest sent) {
        caller.require(Role.KEEPER);
        SentForm form = SentForm.of(sent);
        ObjectNode hold = JsonNodeFactory.instance.objectNode();
        List.of("state", "authority", "reference").forEach(field -> form.putText(hold, field));
        form.find("holdOn").ifPresent(on -> hold.put("on", on));
        return keep(
                caller,
                animalId,
                "hold",
                form,
                hold,
                HOLD,
                request -> records.keepLegalHold(caller, animalId, request));
    }

    @PostMapping(PATH)
    ModelAndView end(Caller caller, @PathVariable UUID animalId, HttpServletRequest sent) {
        SentForm form = SentForm.of(sent);
        ObjectNode decision = JsonNodeFactory.instance.objectNode();
        form.putText(decision, "roomId");
        form.find("releaseNote").ifPresent(note -> decision.put("note", note));
        return keep(
                caller,
                animalId,
                "released",
                form,
                decision,
                DECISION,
                request -> records.keepDecision(caller, animalId, request));
    }

    private ModelAndView keep(
            Caller caller,
            UUID animalId,
            String which,
            SentForm form,
            ObjectNode document,
            Map<String, String> fieldOf,
            Consumer<JsonRequest> keeping) {
        String path = "/animals/" + animalId + "/release";
        SentForms.Outcome outcome = forms.keep(
                caller,
                "POST " + path + " " + which,
                form,
                document,
                request -> {
                    keeping.accept(JsonRequest.written(document));
                    return path + "?kept=" + which;
                },
                fieldOf);
        return outcome.next().map(SeeOther::path).orElseGet(() -> {
            Map<String, List<String>> faults = new LinkedHashMap<>(outcome.faults());
            // What is open is said by the review itself, better than beside a field.
            boolean changedSince = faults.remove("release") != null;
            ModelAndView page =
                    page(HttpStatus.UNPROCESSABLE_CONTENT, caller, animalId, form, faults, outcome.sentBefore());
            page.addObject("refused", which);
            page.addObject("changedSince", changedSince);
            return page;
        });
    }

    private ModelAndView page(
            HttpStatus status,
            Caller caller,
            UUID animalId,
            SentForm form,
            Map<String, List<String>> faults,
            boolean sentBefore) {
        Animals.Newcomer animal =
                animals.find(caller.organisationId(), animalId).orElseThrow(() -> ProblemException.notFound("animal"));
        FollowUp followUp = followUps
                .find(
                        caller.organisationId(),
                        caller.zone(),
                        animalId,
                        LocalDate.ofInstant(clock.instant(), caller.zone()))
                .orElseThrow(() -> ProblemException.notFound("animal"));
        boolean quarantined = followUp.where() == FollowUp.Where.IN_QUARANTINE;
        ReviewView review = replies.review(caller, animalId);
        List<ConditionView> conditions = review.conditions();
        ModelAndView page = new ModelAndView("release", status);
        page.addObject("sheets", List.of("animal", "room"));
        page.addObject("animal", animalId);
        page.addObject("name", animal.name().or(animal::tag).orElse(null));
        page.addObject("where", followUp.where().code());
        page.addObject("room", followUp.room().map(FollowUp.Place::name).orElse(null));
        page.addObject("quarantined", quarantined);
        page.addObject("caution", review.caution());
        page.addObject(
                "open",
                conditions.stream().filter(each -> !each.state().equals(MET)).toList());
        page.addObject(
                "met",
                conditions.stream().filter(each -> each.state().equals(MET)).toList());
        page.addObject(
                "needsVet", conditions.stream().anyMatch(each -> each.id().equals("vet-approval")));
        page.addObject(
                "ended",
                quarantined ? null : replies.findEnded(caller, animalId).orElse(null));
        page.addObject("held", replies.findHoldCaution(caller, animalId).orElse(null));
        page.addObject("hold", replies.findHold(caller, animalId).orElse(null));
        page.addObject(
                "residents",
                replies.listChoices(caller).stream()
                        .filter(QuarantineReplies.Choice::ofResidents)
                        .toList());
        page.addObject("mayKeep", caller.may(Role.KEEPER));
        page.addObject("isVet", caller.may(Role.CLINICIAN));
        page.addObject("mayEnd", caller.isKeeperOrClinician());
        page.addObject("typed", form);
        page.addObject("faults", faults);
        page.addObject("sentBefore", sentBefore);
        page.addObject("refused", "");
        page.addObject("changedSince", false);
        page.addObject("kept", "");
        page.addObject("key", SentForms.nextKey(form, sentBefore));
        return page;
    }
}
