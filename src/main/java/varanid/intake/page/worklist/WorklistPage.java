package varanid.intake.page.worklist;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import varanid.intake.animal.Animals;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Query;
import varanid.intake.platform.web.Role;
import varanid.intake.worklist.Worklist;
import varanid.intake.worklist.Worklist.Listed;
import varanid.intake.worklist.WorklistViews.ActNowItem;
import varanid.intake.worklist.WorklistViews.RoundsItem;

/** Where people arrive: whom to see to now, and the order to walk in. */
@Controller
class WorklistPage {

    private static final String ROUNDS = "rounds";

    /** As many rows as a list gives at once: for paper. */
    private static final String LONGEST = "200";

    private final Worklist worklist;
    private final Animals animals;

    WorklistPage(Worklist worklist, Animals animals) {
        this.worklist = worklist;
        this.animals = animals;
    }

    /** @param given the same as the query has, which checks it */
    @GetMapping("/")
    ModelAndView worklist(Caller caller, Query query, @RequestParam Map<String, String> given) {
        Address here = new Address(given);
        return query.choice("view", List.of(ROUNDS), view -> view).isGiven()
                ? rounds(caller, query, here)
                : actNow(caller, query, here);
    }

    private ModelAndView actNow(Caller caller, Query query, Address here) {
        Listed<ActNowItem> listed = worklist.actNow(caller, query);
        Stream<UUID> ids = listed.items().stream().map(item -> item.animal().id());
        ModelAndView page = page(caller, here, listed, Group.byUrgency(listed.items(), tags(caller, ids)));
        page.addObject("view", "act-now");
        page.addObject(
                "filters",
                Stream.of("", "due", "overdue", "worse", "urgent")
                        .map(only -> new Filter(
                                "worklist.only." + (only.isEmpty() ? "all" : only),
                                here.with("only", only),
                                here.value("only").equals(only)))
                        .toList());
        return page;
    }

    private ModelAndView rounds(Caller caller, Query query, Address here) {
        Listed<RoundsItem> listed = worklist.rounds(caller, query);
        Stream<UUID> ids = listed.items().stream().map(item -> item.animal().id());
        ModelAndView page = page(caller, here, listed, Group.byPlace(listed.items(), tags(caller, ids)));
        boolean due = here.value("due").equals("true");
        page.addObject("view", ROUNDS);
        page.addObject(
                "filters",
                List.of(
                        new Filter("worklist.rounds.everybody", here.with("due", ""), !due),
                        new Filter("worklist.only.due", here.with("due", "true"), due)));
        return page;
    }

    private Map<UUID, String> tags(Caller caller, Stream<UUID> ids) {
        return animals.findTags(caller.organisationId(), ids.toList());
    }

    private ModelAndView page(Caller caller, Address here, Listed<?> listed, List<Group> groups) {
        ModelAndView page = new ModelAndView("worklist");
        page.addObject("sheets", List.of("worklist"));
        page.addObject("scripts", List.of("worklist"));
        page.addObject("asOf", listed.asOf());
        page.addObject("groups", groups);
        page.addObject("mayKeep", caller.may(Role.KEEPER));
        page.addObject("nobody", groups.isEmpty() ? nobody(caller, here) : "");
        page.addObject("actNow", here.of(""));
        page.addObject(ROUNDS, here.of(ROUNDS));
        page.addObject("rooms", rooms(caller, here));
        page.addObject("anyRoom", here.with("room", ""));
        page.addObject("narrowed", here.isNarrowed());
        page.addObject("inRoom", here.has("room"));
        page.addObject(
                "next", listed.next().map(cursor -> here.with("cursor", cursor)).orElse(null));
        page.addObject("first", here.has("cursor") ? here.with("cursor", "") : null);
        boolean cut = (listed.next().isPresent() || here.has("cursor"))
                && !here.value("limit").equals(LONGEST);
        page.addObject("longer", cut ? here.with("limit", LONGEST) : null);
        return page;
    }

    /** Why nobody is listed: the end of a text's key. */
    private String nobody(Caller caller, Address here) {
        if (worklist.isEmpty(caller.organisationId())) {
            return animals.hasAny(caller.organisationId()) ? "in-care" : "yet";
        }
        return here.isNarrowed() || here.has("cursor") ? "such" : "to-see-to";
    }

    private List<RoomChoice> rooms(Caller caller, Address here) {
        return worklist.listRooms(caller.organisationId()).stream()
                .map(room -> new RoomChoice(
                        room.name(),
                        here.with("room", room.id().toString()),
                        here.value("room").equals(room.id().toString())))
                .toList();
    }

    /** One way to narrow the list; {@code text} is the key of its name. */
    public record Filter(String text, String path, boolean here) {}

    public record RoomChoice(String name, String path, boolean here) {}
}
