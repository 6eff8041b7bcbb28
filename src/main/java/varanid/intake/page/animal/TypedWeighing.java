package varanid.intake.page.animal;

import java.util.LinkedHashMap;
import java.util.Map;
import tools.jackson.databind.node.ObjectNode;
import varanid.intake.platform.web.SentForm;
import varanid.intake.weight.Weighings;

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

    /** Puts what it corrects, and what of that stays as it was. */
    static void putCorrected(SentForm form, ObjectNode into) {
        form.find("corrects").ifPresent(id -> into.put("supersedes", id));
        form.putNumber(into, "supersedesFirst", "correctsFirst");
        form.find("weighedAt").ifPresent(at -> into.put("occurredAt", at));
        form.find("fedAt").ifPresent(at -> into.put("lastMealAt", at));
        form.find("weighedNote").ifPresent(note -> into.put("note", note));
    }

    /** One that stands, to be corrected. */
    static SentForm of(Weighings.Standing weighing) {
        Map<String, String> typed = new LinkedHashMap<>();
        typed.put("weight", weighing.value().toPlainString());
        typed.put("unit", weighing.with().unit());
        weighing.with().step().ifPresent(step -> typed.put("resolution", step.toPlainString()));
        weighing.with().scale().ifPresent(scale -> typed.put("scale", scale));
        if (weighing.wet()) {
            typed.put("wet", "true");
        }
        weighing.id().ifPresent(id -> typed.put("corrects", id.toString()));
        weighing.first().ifPresent(place -> typed.put("correctsFirst", place.toString()));
        typed.put("weighedAt", weighing.occurredAt().toString());
        weighing.lastMealAt().ifPresent(at -> typed.put("fedAt", at.toString()));
        weighing.note().ifPresent(note -> typed.put("weighedNote", note));
        return SentForm.filledWith(typed);
    }
}
