package varanid.intake.page.record;

import java.util.List;

/**
 * A page on which one kind of record is kept.
 *
 * @param code of its texts
 * @param path of the page, after the animal's
 * @param back the path to go on to when something was kept, after the animal's
 * @param groups what is asked, the first group always open
 * @param parts the parts of the animal's summary that say what is kept already
 */
public record Sheet(String code, String path, String back, List<FormGroup> groups, List<String> parts) {

    Sheet(String code, String path, List<FormGroup> groups, List<String> parts) {
        this(code, path, path, groups, parts);
    }

    public Sheet {
        groups = List.copyOf(groups);
        parts = List.copyOf(parts);
    }
}
