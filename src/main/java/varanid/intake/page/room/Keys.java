package varanid.intake.page.room;

import java.util.UUID;
import varanid.intake.page.SentForms;
import varanid.intake.platform.web.SentForm;

/** The keys that make sure that a form is kept once. */
final class Keys {

    private Keys() {}

    /** The form's own, as long as nothing was kept under it; else a new one. */
    static String of(SentForm form, boolean sentBefore) {
        return form.key(SentForms.KEY)
                .filter(key -> !sentBefore)
                .orElseGet(() -> UUID.randomUUID().toString());
    }
}
