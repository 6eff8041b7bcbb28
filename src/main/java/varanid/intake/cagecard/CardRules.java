package varanid.intake.cagecard;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** What of the records goes on a card: pure. */
final class CardRules {

    /** The urgency that cannot wait, and the alert that says so. */
    static final String STAT = "stat";

    private static final String CALM_SO_FAR = "calm-so-far";
    private static final String BITES = "bites";
    private static final String HURT = "hurt";
    private static final String NOT_TOLD = "not-told";
    private static final String STANDARD = "standard";
    /** What is left of an id that people can read to each other. */
    private static final int SHORT_ID = 8;

    private CardRules() {}

    /** What is to be seen from afar. */
    static Title title(Optional<String> tag, Optional<String> name) {
        Optional<String> given = name.filter(it -> !tag.map(it::equals).orElse(false));
        return tag.map(it -> new Title(Optional.of(it), given)).orElse(new Title(given, Optional.empty()));
    }

    /**
     * The title, and what else it is called.
     *
     * @param title nothing where it has neither
     * @param name nothing where there is none, or the title is it
     */
    record Title(Optional<String> title, Optional<String> name) {}

    /** The end of the id: its beginning is the time, which those that came together share. */
    static String shortId(UUID id) {
        String text = id.toString();
        return text.substring(text.length() - SHORT_ID);
    }

    /** Whether strict: where either says so, or what it says is not known. */
    static boolean isStrict(String bySummary, String byQuarantine) {
        return !bySummary.equals(STANDARD) || !byQuarantine.equals(STANDARD);
    }

    /**
     * What was told of how it bears handling, the worst first: codes of what to say. That it was calm is no reason to
     * say anything but that it is not known.
     *
     * @param handlingRisk the latest that was told
     * @param hurt how many people are on record as hurt by it
     */
    static List<String> handling(@Nullable String handlingRisk, int hurt) {
        List<String> codes = new ArrayList<>();
        if (BITES.equals(handlingRisk)) {
            codes.add(BITES);
        }
        if (hurt > 0) {
            codes.add(HURT);
        }
        if (handlingRisk != null && !handlingRisk.equals(BITES) && !handlingRisk.equals(CALM_SO_FAR)) {
            codes.add(handlingRisk);
        }
        return codes.isEmpty() ? List.of(NOT_TOLD) : codes;
    }

    /** As much of a text as the paper has room for; that something was cut is to be seen. */
    static String cut(String text, int most) {
        return text.codePointCount(0, text.length()) <= most
                ? text
                : text.substring(0, text.offsetByCodePoints(0, most - 1)).stripTrailing() + "…";
    }
}
