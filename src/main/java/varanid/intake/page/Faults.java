package varanid.intake.page;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import varanid.intake.platform.web.Fault;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.ProblemType;
import varanid.intake.platform.web.SentForm;

/** What is wrong with a form, by the field it is wrong in. */
public final class Faults {

    private Faults() {}

    /**
     * Where no field is named for a place of the request, the field has the name of what it is in.
     *
     * @param fieldOf the names of fields by the beginnings of pointers, of which the longest counts
     */
    public static Map<String, List<String>> byField(List<Fault> faults, Map<String, String> fieldOf) {
        Map<String, List<String>> byField = new LinkedHashMap<>();
        for (Fault fault : faults) {
            String pointer = String.valueOf(fault.pointer());
            String field = fieldOf.entrySet().stream()
                    .filter(entry -> pointer.startsWith(entry.getKey()))
                    .max(Comparator.comparingInt(entry -> entry.getKey().length()))
                    .map(Map.Entry::getValue)
                    .orElseGet(() -> pointer.replaceFirst("^#/?", "").replaceFirst("/.*", ""));
            byField.computeIfAbsent(field, each -> new ArrayList<>()).add(SentForm.words(inForm(fault)));
        }
        return byField;
    }

    /**
     * The same of a request that was refused.
     *
     * @throws ProblemException the same, where it says of something else than the request that it is wrong
     */
    public static Map<String, List<String>> byField(ProblemException refused, Map<String, String> fieldOf) {
        if (!refused.type().equals(ProblemType.INVALID_REQUEST)) {
            throw refused;
        }
        return byField(refused.faults(), fieldOf);
    }

    /** A form has choices and boxes to tick where a program sends codes, and people read other signs for units. */
    private static Fault inForm(Fault fault) {
        String right = fault.right().startsWith("one of: ")
                ? "one of those to choose from"
                : fault.right().replace("confirmed: true", "tick the box below");
        return new Fault(fault.pointer(), fault.parameter(), inForm(fault.wrong()), inForm(right));
    }

    private static String inForm(String words) {
        return words.replace(" Cel", " °C").replace(" [degF]", " °F").replace(" [in_i]", " in");
    }
}
