package varanid.intake.page.worklist;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Items;
import varanid.intake.platform.web.Query;
import varanid.intake.worklist.Worklist;
import varanid.intake.worklist.WorklistViews.ActNowItem;
import varanid.intake.worklist.WorklistViews.RoundsItem;

/** Whom to see to now, and the order to walk in. */
@Controller
class WorklistPage {

    /** As the interface names them; nothing is all. */
    private static final List<String> ONLY = List.of("", "urgent", "worse", "overdue", "due");

    private static final Pattern NEXT = Pattern.compile("<([^>]*)>; rel=\"next\"");

    private final Worklist worklist;

    WorklistPage(Worklist worklist) {
        this.worklist = worklist;
    }

    @GetMapping("/")
    ModelAndView actNow(
            Caller caller,
            Query query,
            @RequestParam(defaultValue = "") String only,
            @RequestParam(required = false) @Nullable String room,
            @RequestParam(required = false) @Nullable String cursor) {
        ResponseEntity<Items<ActNowItem>> reply = worklist.actNow(caller, query);
        ModelAndView page = page("worklist", reply, room, cursor);
        page.addObject("only", only);
        page.addObject("filters", ONLY);
        return page;
    }

    @GetMapping("/rounds")
    ModelAndView rounds(
            Caller caller,
            Query query,
            @RequestParam(defaultValue = "") String due,
            @RequestParam(required = false) @Nullable String room,
            @RequestParam(required = false) @Nullable String cursor) {
        ResponseEntity<Items<RoundsItem>> reply = worklist.rounds(caller, query);
        ModelAndView page = page("rounds", reply, room, cursor);
        page.addObject("due", due);
        page.addObject("stops", stops(items(reply)));
        return page;
    }

    /**
     * Stops that follow each other at one work place.
     *
     * @param reminder what to remember there
     */
    record Stops(String workPlace, String reminder, List<RoundsItem> items) {}

    private static List<Stops> stops(List<RoundsItem> items) {
        Map<String, Stops> stops = new LinkedHashMap<>();
        for (RoundsItem item : items) {
            stops.computeIfAbsent(item.workPlace(), place -> new Stops(place, item.reminder(), new ArrayList<>()))
                    .items()
                    .add(item);
        }
        return List.copyOf(stops.values());
    }

    private static <V> ModelAndView page(
            String view, ResponseEntity<Items<V>> reply, @Nullable String room, @Nullable String cursor) {
        ModelAndView page = new ModelAndView(view);
        page.addObject("sheets", List.of("worklist"));
        page.addObject("items", items(reply));
        page.addObject("room", room);
        page.addObject("further", cursor != null);
        page.addObject("next", next(reply).orElse(null));
        return page;
    }

    private static <V> List<V> items(ResponseEntity<Items<V>> reply) {
        Items<V> body = reply.getBody();
        return body == null ? List.of() : body.items();
    }

    private static Optional<String> next(ResponseEntity<?> reply) {
        return reply.getHeaders().getOrDefault(HttpHeaders.LINK, List.of()).stream()
                .map(NEXT::matcher)
                .filter(Matcher::find)
                .map(found -> found.group(1))
                .findFirst();
    }
}
