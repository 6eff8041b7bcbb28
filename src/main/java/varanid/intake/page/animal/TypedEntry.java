package varanid.intake.page.animal;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;
import varanid.intake.diary.Ate;
import varanid.intake.diary.Cleaning;
import varanid.intake.diary.Demeanour;
import varanid.intake.diary.DiaryEntry;
import varanid.intake.diary.MiteCheck;
import varanid.intake.diary.Noticed;
import varanid.intake.diary.Seen;
import varanid.intake.platform.web.SentForm;

/** A line of the diary as the fields of its form. */
final class TypedEntry {

    /** What can be chosen in which field, by codes. */
    static final Map<String, List<String>> CHOICES = choices();

    /** Where it corrects another one: that one, and when that was. */
    private static final List<String> OF_ANOTHER = List.of("supersedes", "occurredAt");

    private TypedEntry() {}

    private static Map<String, List<String>> choices() {
        Map<String, List<String>> choices = new LinkedHashMap<>();
        choices.put("ate", codes(Ate.values(), Ate::code));
        choices.put("drank", codes(Noticed.values(), Noticed::code));
        choices.put("stool", codes(Noticed.values(), Noticed::code));
        choices.put("urate", codes(Noticed.values(), Noticed::code));
        choices.put("seen", codes(Seen.values(), Seen::code));
        choices.put("demeanour", codes(Demeanour.values(), Demeanour::code));
        choices.put("miteCheck", List.of(MiteCheck.NONE_SEEN.code(), MiteCheck.SEEN.code()));
        choices.put("cleaning", List.of(Cleaning.SPOT_CLEAN.code(), Cleaning.FULL_CLEAN.code()));
        return choices;
    }

    private static <T> List<String> codes(T[] all, Function<T, String> code) {
        return Arrays.stream(all).map(code).toList();
    }

    /** As a program would send it. */
    static ObjectNode read(SentForm form) {
        ObjectNode entry = JsonNodeFactory.instance.objectNode();
        for (String field : List.of("ate", "food", "drank", "seen", "demeanour", "cleaning", "miteCheck", "note")) {
            form.putText(entry, field);
        }
        ObjectNode passed = JsonNodeFactory.instance.objectNode();
        form.putText(passed, "stool");
        form.putText(passed, "urate");
        if (!passed.isEmpty()) {
            entry.set("passed", passed);
        }
        OF_ANOTHER.forEach(field -> form.putText(entry, field));
        return entry;
    }

    /** One that stands, to be corrected. */
    static SentForm of(DiaryEntry entry) {
        Map<String, String> typed = new LinkedHashMap<>();
        entry.ate().ifPresent(it -> typed.put("ate", it.code()));
        entry.food().ifPresent(it -> typed.put("food", it));
        entry.drank().ifPresent(it -> typed.put("drank", it.code()));
        entry.stool().ifPresent(it -> typed.put("stool", it.code()));
        entry.urate().ifPresent(it -> typed.put("urate", it.code()));
        entry.seen().ifPresent(it -> typed.put("seen", it.code()));
        entry.demeanour().ifPresent(it -> typed.put("demeanour", it.code()));
        typed.put("miteCheck", entry.miteCheck().code());
        typed.put("cleaning", entry.cleaning().code());
        entry.note().ifPresent(it -> typed.put("note", it));
        typed.put("supersedes", entry.id().toString());
        typed.put("occurredAt", entry.occurredAt().toString());
        return SentForm.filledWith(typed);
    }
}
