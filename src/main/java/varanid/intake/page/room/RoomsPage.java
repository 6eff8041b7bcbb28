package varanid.intake.page.room;

import jakarta.servlet.http.HttpServletRequest;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;
import varanid.intake.page.SeeOther;
import varanid.intake.page.SentForms;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.Role;
import varanid.intake.platform.web.SentForm;
import varanid.intake.quarantine.QuarantineRecords;
import varanid.intake.quarantine.QuarantineReplies;
import varanid.intake.quarantine.RoomView;

/** The rooms of the organisation. */
@Controller
class RoomsPage {

    static final int MOST = 50;
    private static final UUID BEFORE_ALL = new UUID(0, 0);

    private static final Map<String, String> FIELDS = Map.of("#/kind", "roomKind");

    private final QuarantineReplies replies;
    private final QuarantineRecords records;
    private final SentForms forms;

    RoomsPage(QuarantineReplies replies, QuarantineRecords records, SentForms forms) {
        this.replies = replies;
        this.records = records;
        this.forms = forms;
    }

    /** @param after the last one of the page before */
    @GetMapping("/rooms")
    ModelAndView rooms(Caller caller, @RequestParam(required = false) @Nullable UUID after) {
        return list(HttpStatus.OK, caller, after, SentForm.empty(), Map.of(), false);
    }

    @PostMapping("/rooms")
    ModelAndView add(Caller caller, HttpServletRequest sent) {
        caller.require(Role.KEEPER);
        SentForm form = SentForm.of(sent);
        ObjectNode room = document(form);
        form.find("roomKind").ifPresent(kind -> room.put("kind", kind));
        SentForms.Outcome outcome = forms.keep(
                caller,
                "POST /rooms",
                form,
                room,
                request -> "/rooms/" + records.keepRoom(caller, JsonRequest.written(room)) + "?kept=added",
                FIELDS);
        return outcome.next()
                .map(SeeOther::path)
                .orElseGet(() -> list(
                        HttpStatus.UNPROCESSABLE_CONTENT, caller, null, form, outcome.faults(), outcome.sentBefore()));
    }

    /** What a room is called and what is written of it. */
    static ObjectNode document(SentForm form) {
        ObjectNode room = JsonNodeFactory.instance.objectNode();
        form.putText(room, "name");
        form.putText(room, "notes");
        return room;
    }

    private ModelAndView list(
            HttpStatus status,
            Caller caller,
            @Nullable UUID after,
            SentForm form,
            Map<String, List<String>> faults,
            boolean sentBefore) {
        List<RoomView> found =
                replies.listRooms(caller, Optional.ofNullable(after).orElse(BEFORE_ALL), MOST + 1);
        ModelAndView page = new ModelAndView("rooms", status);
        page.addObject("sheets", List.of("animal", "room"));
        page.addObject("rooms", found.stream().limit(MOST).toList());
        page.addObject("first", after == null);
        page.addObject("next", found.size() > MOST ? found.get(MOST - 1).id() : null);
        page.addObject("mayKeep", caller.may(Role.KEEPER));
        page.addObject("typed", form);
        page.addObject("faults", faults);
        page.addObject("sentBefore", sentBefore);
        page.addObject("key", SentForms.nextKey(form, sentBefore));
        return page;
    }
}
