package varanid.intake.page.room;

import jakarta.servlet.http.HttpServletRequest;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;
import varanid.intake.page.Faults;
import varanid.intake.page.SeeOther;
import varanid.intake.page.SentForms;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Fault;
import varanid.intake.platform.web.IfMatch;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.Role;
import varanid.intake.platform.web.SentForm;
import varanid.intake.quarantine.ClockView;
import varanid.intake.quarantine.EventView;
import varanid.intake.quarantine.QuarantineRecords;
import varanid.intake.quarantine.QuarantineReplies;

/** One room: its clock, what happened in it, and what is written down of it. */
@Controller
class RoomPage {

    private static final int USUAL_EVENTS = 20;
    private static final int MORE_EVENTS = 100;

    private static final String TREATMENT_ENDED = "treatment-ended";

    private static final Map<String, String> ANSWER = Map.of(
            "#/on",
            "answeredOn",
            "#/reason",
            "answerNote",
            "#/about",
            "about",
            "#/ruling",
            "word",
            "#/kind",
            "word",
            "#",
            "answer");

    private static final Map<String, String> EVENT =
            Map.of("#/animalId", "happenedTo", "#/on", "happenedOn", "#/reason", "happenedNote", "#", "cause");

    private static final Map<String, String> LONGER = Map.of("#/reason", "longerBecause", "#", "days");

    private static final Map<String, String> MISTAKE = Map.of("#", "mistakeBecause");

    private final QuarantineReplies replies;
    private final QuarantineRecords records;
    private final SentForms forms;

    RoomPage(QuarantineReplies replies, QuarantineRecords records, SentForms forms) {
        this.replies = replies;
        this.records = records;
        this.forms = forms;
    }

    /**
     * @param kept what was just kept: added, changed, answered, happened, longer or withdrawn
     * @param events how many of what happened are shown
     * @param mistake the event that somebody wants to withdraw
     */
    @GetMapping("/rooms/{roomId}")
    ModelAndView room(
            Caller caller,
            @PathVariable UUID roomId,
            @RequestParam(defaultValue = "") String kept,
            @RequestParam(defaultValue = "" + USUAL_EVENTS) int events,
            @RequestParam(required = false) @Nullable UUID mistake) {
        QuarantineReplies.Opened opened = replies.openRoom(caller, roomId);
        Map<String, String> typed = new LinkedHashMap<>();
        typed.put("name", opened.room().name());
        typed.put("version", String.valueOf(opened.version()));
        Optional.ofNullable(opened.room().notes()).ifPresent(notes -> typed.put("notes", notes));
        ModelAndView page = one(HttpStatus.OK, caller, opened, Math.max(1, events), SentForm.filledWith(typed));
        page.addObject("kept", kept);
        page.addObject("mistake", mistake == null ? null : findMistake(opened, mistake));
        return page;
    }

    @PostMapping("/rooms/{roomId}")
    ModelAndView change(Caller caller, @PathVariable UUID roomId, HttpServletRequest sent) {
        caller.require(Role.KEEPER);
        SentForm form = SentForm.of(sent);
        ObjectNode room = RoomsPage.document(form);
        SentForms.Outcome outcome = forms.keep(
                caller,
                "POST /rooms/" + roomId,
                form,
                room,
                request -> {
                    records.changeRoom(caller, roomId, IfMatch.of(form), JsonRequest.written(room));
                    return "/rooms/" + roomId + "?kept=changed";
                },
                Map.of());
        return outcome.next().map(SeeOther::path).orElseGet(() -> refused(caller, roomId, "change", form, outcome));
    }

    /** What was waited for: that a treatment ended, or what a vet says, which only a clinician writes down. */
    @PostMapping("/rooms/{roomId}/answers")
    ModelAndView answer(Caller caller, @PathVariable UUID roomId, HttpServletRequest sent) {
        caller.requireKeeperOrClinician();
        SentForm form = SentForm.of(sent);
        ObjectNode event = JsonNodeFactory.instance.objectNode();
        String word = form.typed("word");
        event.put("kind", word.equals(TREATMENT_ENDED) ? word : "vet-spoke");
        if (!word.equals(TREATMENT_ENDED)) {
            form.find("word").ifPresent(ruling -> event.put("ruling", ruling));
        }
        form.putText(event, "about");
        form.find("answeredOn").ifPresent(on -> event.put("on", on));
        form.find("answerNote").ifPresent(note -> event.put("reason", note));
        if (word.isBlank()) {
            // Without a word nobody knows whether it takes a clinician: what is missing is said here.
            return refused(
                    caller, roomId, "answered", form, new SentForms.Outcome(Optional.empty(), wordless(form), false));
        }
        return keep(caller, roomId, "answers", "answered", form, event, ANSWER);
    }

    /** What happened in the work, or was found in the room, and is no look, no result and nobody's coming or going. */
    @PostMapping("/rooms/{roomId}/events")
    ModelAndView happened(Caller caller, @PathVariable UUID roomId, HttpServletRequest sent) {
        SentForm form = SentForm.of(sent);
        ObjectNode event = JsonNodeFactory.instance.objectNode().put("kind", "occurred");
        form.putText(event, "cause");
        form.find("happenedTo").ifPresent(animal -> event.put("animalId", animal));
        form.find("happenedOn").ifPresent(on -> event.put("on", on));
        form.find("happenedNote").ifPresent(note -> event.put("reason", note));
        return keep(caller, roomId, "events", "happened", form, event, EVENT);
    }

    /** More days for everybody there; fewer only a vet decides. */
    @PostMapping("/rooms/{roomId}/longer")
    ModelAndView longer(Caller caller, @PathVariable UUID roomId, HttpServletRequest sent) {
        SentForm form = SentForm.of(sent);
        ObjectNode event = JsonNodeFactory.instance.objectNode().put("kind", "lengthened");
        form.putNumber(event, "days", "days");
        form.find("longerBecause").ifPresent(why -> event.put("reason", why));
        return keep(caller, roomId, "longer", "longer", form, event, LONGER);
    }

    @PostMapping("/rooms/{roomId}/mistakes")
    ModelAndView mistake(Caller caller, @PathVariable UUID roomId, HttpServletRequest sent) {
        SentForm form = SentForm.of(sent);
        ObjectNode event = JsonNodeFactory.instance.objectNode().put("kind", "withdrawn");
        form.find("mistake").ifPresent(about -> event.put("about", about));
        form.find("mistakeBecause").ifPresent(why -> event.put("reason", why));
        return keep(caller, roomId, "mistakes", "withdrawn", form, event, MISTAKE);
    }

    private ModelAndView keep(
            Caller caller,
            UUID roomId,
            String path,
            String kept,
            SentForm form,
            ObjectNode event,
            Map<String, String> fieldOf) {
        caller.requireKeeperOrClinician();
        SentForms.Outcome outcome = forms.keep(
                caller,
                "POST /rooms/" + roomId + "/" + path,
                form,
                event,
                request -> {
                    records.keepEvent(caller, roomId, JsonRequest.written(event));
                    return "/rooms/" + roomId + "?kept=" + kept;
                },
                fieldOf);
        return outcome.next().map(SeeOther::path).orElseGet(() -> refused(caller, roomId, kept, form, outcome));
    }

    /** One that was recorded by itself and not withdrawn; what follows from another record is corrected there. */
    private static @Nullable EventView findMistake(QuarantineReplies.Opened opened, UUID id) {
        return opened.clock().history().stream()
                .map(ClockView.StepView::event)
                .filter(event -> event.id().equals(id) && event.source() == null)
                .findFirst()
                .orElse(null);
    }

    private static Map<String, List<String>> wordless(SentForm form) {
        List<Fault> missing = new ArrayList<>();
        if (form.find("about").isEmpty()) {
            missing.add(Fault.at("#/about", "is missing", "one of the choices"));
        }
        missing.add(Fault.at("#/ruling", "is missing", "one of the choices"));
        return Faults.byField(missing, ANSWER);
    }

    private ModelAndView refused(Caller caller, UUID roomId, String which, SentForm form, SentForms.Outcome outcome) {
        QuarantineReplies.Opened opened = replies.openRoom(caller, roomId);
        ModelAndView page = one(HttpStatus.UNPROCESSABLE_CONTENT, caller, opened, USUAL_EVENTS, form);
        page.addObject(
                "mistake",
                form.findId("mistake").map(id -> findMistake(opened, id)).orElse(null));
        page.addObject("faults", outcome.faults());
        page.addObject("sentBefore", outcome.sentBefore());
        page.addObject("refused", which);
        page.addObject("key", SentForms.nextKey(form, outcome.sentBefore()));
        return page;
    }

    private ModelAndView one(
            HttpStatus status, Caller caller, QuarantineReplies.Opened opened, int events, SentForm form) {
        List<ClockView.StepView> history = new ArrayList<>(opened.clock().history());
        Collections.reverse(history);
        List<UUID> waitedFor = opened.clock().waitingFor().stream()
                .map(ClockView.QuestionView::event)
                .toList();
        List<UUID> asked = opened.clock().openQuestions().stream()
                .map(ClockView.QuestionView::event)
                .toList();
        ModelAndView page = new ModelAndView("room", status);
        page.addObject("sheets", List.of("animal", "room"));
        page.addObject("room", opened.room());
        page.addObject("clock", opened.clock());
        page.addObject("waitedFor", waitedFor);
        List<ClockView.QuestionView> treatments = opened.clock().waitingFor().stream()
                .filter(each -> !asked.contains(each.event()))
                .toList();
        page.addObject("treatments", treatments);
        boolean isVet = caller.may(Role.CLINICIAN);
        List<ClockView.QuestionView> answerable = new ArrayList<>(treatments);
        if (isVet) {
            answerable.addAll(0, opened.clock().openQuestions());
        }
        page.addObject("answerable", isVet || caller.may(Role.KEEPER) ? answerable : List.of());
        page.addObject(
                "words",
                isVet
                        ? List.of("goes-on", "was-nothing", "restarts", "restarts-after-treatment", TREATMENT_ENDED)
                        : List.of(TREATMENT_ENDED));
        page.addObject("history", history.stream().limit(events).toList());
        page.addObject("historyMore", history.size() > events ? events + MORE_EVENTS : null);
        page.addObject("mayKeep", caller.may(Role.KEEPER));
        page.addObject("mayWrite", caller.isKeeperOrClinician());
        page.addObject("isVet", isVet);
        page.addObject("happenings", replies.listHappenings());
        page.addObject("mistake", null);
        page.addObject("typed", form);
        page.addObject("faults", Map.of());
        page.addObject("sentBefore", false);
        page.addObject("refused", "");
        page.addObject("kept", "");
        page.addObject("key", UUID.randomUUID().toString());
        return page;
    }
}
