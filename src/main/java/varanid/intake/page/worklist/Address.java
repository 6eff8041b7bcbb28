package varanid.intake.page.worklist;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** The address of the page that is shown, to make those that lead on from it. */
record Address(Map<String, String> given) {

    /** What narrows a list. */
    private static final List<String> FILTERS = List.of("only", "due", "room");

    /** Empty where it is not given. */
    String value(String name) {
        return given.getOrDefault(name, "");
    }

    boolean has(String name) {
        return !value(name).isEmpty();
    }

    boolean isNarrowed() {
        return FILTERS.stream().anyMatch(this::has);
    }

    /** The same with one thing changed, or left out where its value is empty; from the first page on, unless that is it. */
    String with(String name, String value) {
        Map<String, String> all = new TreeMap<>(given);
        all.remove("cursor");
        all.put(name, value);
        return path(all);
    }

    /** The other list, of the same room and day. */
    String of(String view) {
        Map<String, String> all = new TreeMap<>(given);
        all.keySet().retainAll(List.of("room", "asOf"));
        all.put("view", view);
        return path(all);
    }

    private static String path(Map<String, String> values) {
        String query = values.entrySet().stream()
                .filter(each -> !each.getValue().isEmpty())
                .map(each -> each.getKey() + "=" + URLEncoder.encode(each.getValue(), StandardCharsets.UTF_8))
                .collect(Collectors.joining("&"));
        return query.isEmpty() ? "/" : "/?" + query;
    }
}
