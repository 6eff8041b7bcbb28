package varanid.intake.page.worklist;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import varanid.intake.worklist.WorklistViews.ActNowItem;
import varanid.intake.worklist.WorklistViews.RoundsItem;

/**
 * Rows that follow each other and have a heading together.
 *
 * @param code the end of the key of its heading, and its anchor
 * @param reminder what to remember here, where there is anything
 * @param parts its rows; in the rounds by room
 */
public record Group(String code, @Nullable String reminder, List<Part> parts) {

    /**
     * Rows of one room, or simply rows.
     *
     * @param room its name; empty for those in none
     */
    public record Part(String room, List<Row> rows) {}

    /** How many animals it has on this page. */
    public int size() {
        return parts.stream().mapToInt(part -> part.rows().size()).sum();
    }

    static List<Group> byUrgency(List<ActNowItem> items, Map<UUID, String> tags) {
        return runs(items, Group::rank).stream()
                .map(run -> new Group(
                        rank(run.get(0)),
                        null,
                        List.of(new Part(
                                "", run.stream().map(item -> Row.of(item, tags)).toList()))))
                .toList();
    }

    static List<Group> byPlace(List<RoundsItem> items, Map<UUID, String> tags) {
        return runs(items, Group::place).stream()
                .map(run -> new Group(
                        place(run.get(0)),
                        run.get(0).reminder(),
                        runs(run, Group::room).stream()
                                .map(part -> new Part(
                                        room(part.get(0)),
                                        part.stream()
                                                .map(item -> Row.of(item, tags))
                                                .toList()))
                                .toList()))
                .toList();
    }

    /** Cuts the list wherever the key changes: nothing is moved. */
    private static <T> List<List<T>> runs(List<T> items, Function<T, String> key) {
        List<List<T>> runs = new ArrayList<>();
        @Nullable String last = null;
        for (T item : items) {
            String own = key.apply(item);
            if (!Objects.equals(own, last)) {
                runs.add(new ArrayList<>());
                last = own;
            }
            runs.get(runs.size() - 1).add(item);
        }
        return runs;
    }

    /** Who was never looked at stands among the urgent. */
    private static String rank(ActNowItem item) {
        @Nullable String urgency = item.urgency();
        if (urgency == null) {
            return "urgent";
        }
        return !urgency.equals("routine") ? urgency : item.worse() ? "worse" : "rest";
    }

    private static String place(RoundsItem item) {
        return item.workPlace() + "-" + item.isolation();
    }

    private static String room(RoundsItem item) {
        return item.room() == null ? "" : item.room().name();
    }
}
