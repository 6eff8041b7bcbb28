package varanid.intake.page.record;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import varanid.intake.platform.web.SentForm;

/**
 * Fields that belong together.
 *
 * @param code of its heading, the message {@code group.} and the code, where it has no title
 * @param title its heading, where data says it
 * @param hint what is asked, in a sentence
 */
public record FormGroup(
        String code, @Nullable String title, @Nullable String hint, List<FormField> fields) {

    public FormGroup {
        fields = List.copyOf(fields);
    }

    static FormGroup of(String code, FormField... fields) {
        return new FormGroup(code, null, null, List.of(fields));
    }

    /** Whether anything in it was filled in, so that the page shows it. */
    public boolean isFilledIn(SentForm form) {
        return fields.stream()
                .filter(field -> field.kind() != FormField.Kind.UNIT)
                .anyMatch(field -> form.find(field.name()).isPresent());
    }

    /** Whether anything in it is wrong. */
    public boolean isFaulty(Map<String, List<String>> faults) {
        return fields.stream().anyMatch(field -> faults.containsKey(field.name()));
    }
}
