package varanid.intake.page.animal;

import tools.jackson.databind.node.ObjectNode;
import varanid.intake.platform.web.SentForm;

/** A weighing as the fields of a form. */
final class TypedWeighing {

    private TypedWeighing() {}

    /** Puts it as a program would send it. */
    static void put(SentForm form, ObjectNode into) {
        form.putNumber(into, "value", "weight");
        form.putText(into, "unit");
        form.putNumber(into, "resolution", "resolution");
        form.putText(into, "scale");
        form.putTick(into, "confirmed");
    }
}
