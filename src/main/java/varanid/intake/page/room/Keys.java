package varanid.intake.page.room;

import java.util.UUID;
import varanid.intake.page.SentForms;
import varanid.intake.platform.web.SentForm;

/** The keys that make sure that a form is kept once. */
final class Keys {

    private Keys() {}

    /**
     * The form's own, as long as nothing was kept under it; else a new one. Where a page has several forms, each writes its
     * own word before the key; that is left out.
     */
    static String of(SentForm form, boolean sentBefore) {
        return form.key(SentForms.KEY)
                .filter(key -> !sentBefore)
                .map(key -> key.substring(key.lastIndexOf(' ') + 1))
                .orElseGet(() -> UUID.randomUUID().toString());
    }
}
