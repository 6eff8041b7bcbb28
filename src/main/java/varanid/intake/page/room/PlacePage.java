package varanid.intake.page.room;

import jakarta.servlet.http.HttpServletRequest;
import java.time.Clock;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Consumer;
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
import varanid.intake.animal.Animals;
import varanid.intake.page.Faults;
import varanid.intake.page.SeeOther;
import varanid.intake.page.SentForms;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Fault;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.Role;
import varanid.intake.platform.web.SentForm;
import varanid.intake.quarantine.ArrivalView;
import varanid.intake.quarantine.FollowUp;
import varanid.intake.quarantine.FollowUps;
import varanid.intake.quarantine.PlacementView;
import varanid.intake.quarantine.QuarantineRecords;
import varanid.intake.quarantine.QuarantineReplies;

/** Where an animal stands: putting it into a room, which first shows whom that delays; that it left; a mistake in that. */
@Controller
class PlacePage {

    private static final String PATH = "/animals/{animalId}/place";

    private static final Map<String, String> PUT = Map.of(
            "#/roomId",
            "roomId",
            "#/on",
            "on",
            "#/reason",
            "reason",
            "#/returned",
            "returned",
            "#/residentAlready",
            "residentAlready",
            "#",
            "place");
    private static final Map<String, String> ROOM = Map.of("#/kind", "roomKind");
    private static final Map<String, String> DEPARTURE =
            Map.of("#/on", "leftOn", "#/because", "because", "#/reason", "leftReason", "#", "departure");
    private static final Map<String, String> MISTAKE = Map.of("#/reason", "mistake", "#", "withdrawal");

    private static final String EXPLAINED = "died-explained";
    private static final String UNEXPLAINED = "died-unexplained";

    /** Why it left; whether a death seems explained is part of the choice. */
    static final List<String> BECAUSE =
            List.of("moved-on", "returned-to-owner", "taken-by-authority", EXPLAINED, UNEXPLAINED, "escaped");

    private final QuarantineReplies replies;
    private final QuarantineRecords records;
    private final FollowUps followUps;
    private final Animals animals;
    private final SentForms forms;
    private final Clock clock;

    PlacePage(
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

    /**
     * Where it stands; with a room and a day in the query, what putting it there would change.
     *
     * @param kept what was just kept: placed, left, withdrawn or room
     */
    @GetMapping(PATH)
    ModelAndView place(
            Caller caller,
            @PathVariable UUID animalId,
            @RequestParam(defaultValue = "") String kept,
            HttpServletRequest sent) {
        caller.require(Role.KEEPER);
        SentForm form = SentForm.of(sent);
        ModelAndView page = page(HttpStatus.OK, caller, animalId, form, Map.of(), false);
        page.addObject("kept", kept);
        return page;
    }

    @PostMapping(PATH)
    ModelAndView put(Caller caller, @PathVariable UUID animalId, HttpServletRequest sent) {
        caller.require(Role.KEEPER);
        SentForm form = SentForm.of(sent);
        ObjectNode placement = JsonNodeFactory.instance.objectNode();
        List.of("roomId", "on", "reason").forEach(field -> form.putText(placement, field));
        form.putTick(placement, "returned");
        form.putTick(placement, "residentAlready");
        return keep(
                caller,
                animalId,
                "place",
                form,
                placement,
                "placed",
                PUT,
                request -> records.keepPlacement(caller, animalId, request));
    }

    @PostMapping(PATH + "/rooms")
    ModelAndView addRoom(Caller caller, @PathVariable UUID animalId, HttpServletRequest sent) {
        caller.require(Role.KEEPER);
        SentForm form = SentForm.of(sent);
        ObjectNode room = JsonNodeFactory.instance.objectNode();
        form.putText(room, "name");
        form.find("roomKind").ifPresent(kind -> room.put("kind", kind));
        String path = "/animals/" + animalId + "/place";
        SentForms.Outcome outcome = forms.keep(
                caller,
                "POST " + path + "/rooms",
                form,
                room,
                request -> path + "?kept=room&roomId=" + records.keepRoom(caller, JsonRequest.written(room)),
                ROOM);
        return outcome.next().map(SeeOther::path).orElseGet(() -> refused(caller, animalId, "room", form, outcome));
    }

    @PostMapping(PATH + "/departures")
    ModelAndView leave(Caller caller, @PathVariable UUID animalId, HttpServletRequest sent) {
        caller.require(Role.KEEPER);
        SentForm form = SentForm.of(sent);
        ObjectNode departure = JsonNodeFactory.instance.objectNode();
        form.find("leftOn").ifPresent(on -> departure.put("on", on));
        form.find("because").ifPresent(because -> {
            boolean died = List.of(EXPLAINED, UNEXPLAINED).contains(because);
            departure.put("because", died ? "died" : because);
            if (died) {
                departure.put("explained", because.equals(EXPLAINED));
            }
        });
        form.find("leftReason").ifPresent(reason -> departure.put("reason", reason));
        return keep(
                caller,
                animalId,
                "departure",
                form,
                departure,
                "left",
                DEPARTURE,
                request -> records.keepDeparture(caller, animalId, request));
    }

    @PostMapping(PATH + "/mistakes")
    ModelAndView withdraw(Caller caller, @PathVariable UUID animalId, HttpServletRequest sent) {
        caller.require(Role.KEEPER);
        SentForm form = SentForm.of(sent);
        ObjectNode withdrawal = JsonNodeFactory.instance.objectNode();
        form.putText(withdrawal, "about");
        form.find("mistake").ifPresent(reason -> withdrawal.put("reason", reason));
        return keep(
                caller,
                animalId,
                "withdrawal",
                form,
                withdrawal,
                "withdrawn",
                MISTAKE,
                request -> records.keepWithdrawal(caller, animalId, request));
    }

    private ModelAndView keep(
            Caller caller,
            UUID animalId,
            String which,
            SentForm form,
            ObjectNode document,
            String kept,
            Map<String, String> fieldOf,
            Consumer<JsonRequest> keeping) {
        String path = "/animals/" + animalId + "/place";
        SentForms.Outcome outcome = forms.keep(
                caller,
                "POST " + path + " " + which,
                form,
                document,
                request -> {
                    keeping.accept(JsonRequest.written(document));
                    return path + "?kept=" + kept;
                },
                fieldOf);
        return outcome.next().map(SeeOther::path).orElseGet(() -> refused(caller, animalId, which, form, outcome));
    }

    private ModelAndView refused(Caller caller, UUID animalId, String which, SentForm form, SentForms.Outcome outcome) {
        ModelAndView page =
                page(HttpStatus.UNPROCESSABLE_CONTENT, caller, animalId, form, outcome.faults(), outcome.sentBefore());
        page.addObject("refused", which);
        return page;
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
        LocalDate today = LocalDate.ofInstant(clock.instant(), caller.zone());
        FollowUp followUp = followUps
                .find(caller.organisationId(), caller.zone(), animalId, today)
                .orElseThrow(() -> ProblemException.notFound("animal"));
        @Nullable UUID here = followUp.room().map(FollowUp.Place::id).orElse(null);
        Map<String, List<String>> allFaults = new LinkedHashMap<>(faults);
        Optional<ArrivalView> preview = preview(caller, animalId, form, allFaults);
        List<QuarantineReplies.Choice> choices = replies.listChoices(caller).stream()
                .filter(room -> !room.id().equals(here))
                .toList();
        boolean amongResidents = preview.isPresent()
                && choices.stream()
                        .anyMatch(room -> room.ofResidents()
                                && room.id().equals(preview.get().roomId()));
        @Nullable PlacementView last = replies.findLastMove(caller, animalId).orElse(null);
        ModelAndView page = new ModelAndView("place", status);
        page.addObject("sheets", List.of("animal", "room"));
        page.addObject("animal", animalId);
        page.addObject("name", animal.name().or(animal::tag).orElse(null));
        page.addObject("where", followUp.where().code());
        page.addObject("room", followUp.room().map(FollowUp.Place::name).orElse(null));
        page.addObject("died", last != null && "died".equals(last.because()));
        page.addObject("quarantined", followUp.where() == FollowUp.Where.IN_QUARANTINE);
        page.addObject("gone", followUp.where() == FollowUp.Where.GONE);
        page.addObject("residentAlready", followUp.where() == FollowUp.Where.NOT_PLACED && amongResidents);
        page.addObject("amongResidents", amongResidents);
        page.addObject("choices", choices);
        page.addObject("preview", preview.orElse(null));
        page.addObject("ahead", preview.map(shown -> shown.on().isAfter(today)).orElse(false));
        page.addObject("last", last);
        page.addObject("because", BECAUSE);
        page.addObject("held", replies.findHoldCaution(caller, animalId).orElse(null));
        page.addObject("cohort", replies.findCohortAfterDeath(caller, animalId).orElse(null));
        page.addObject("typed", form);
        page.addObject("faults", allFaults);
        page.addObject("sentBefore", sentBefore);
        page.addObject("refused", "");
        page.addObject("kept", "");
        page.addObject("key", SentForms.nextKey(form, sentBefore));
        return page;
    }

    /** What it would change, where a room was chosen; what is wrong with that goes to the faults. */
    private Optional<ArrivalView> preview(
            Caller caller, UUID animalId, SentForm form, Map<String, List<String>> faults) {
        if (!form.names().contains("roomId")) {
            return Optional.empty();
        }
        Optional<UUID> room = form.findId("roomId");
        Map<String, List<String>> wrong;
        if (room.isEmpty()) {
            wrong = Faults.byField(List.of(Fault.at("#/roomId", "is missing", "one of the rooms")), PUT);
        } else {
            ObjectNode wanted = JsonNodeFactory.instance.objectNode();
            wanted.put("animalId", animalId.toString());
            form.putText(wanted, "on");
            try {
                return Optional.of(replies.preview(caller, room.get(), JsonRequest.written(wanted)));
            } catch (ProblemException e) {
                wrong = Faults.byField(e, PUT);
            }
        }
        wrong.forEach(faults::putIfAbsent);
        return Optional.empty();
    }
}
