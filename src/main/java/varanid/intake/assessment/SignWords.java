package varanid.intake.assessment;

import java.util.Locale;
import varanid.intake.scoring.ChecklistDraft;

/**
 * How a sign is told where its question does not stand beside it: "Open mouth breathing: open all the time". A level's own
 * words say nothing without what they are about.
 */
public final class SignWords {

    private SignWords() {}

    /** A sign in one line. */
    public static String tell(ChecklistDraft.Finding finding, ChecklistDraft.Level level) {
        return tell(finding.id(), label(level));
    }

    /** A sign in one line, of which the level's words are known. */
    public static String tell(String finding, String label) {
        return name(finding) + ": " + small(label);
    }

    /** What a level is, in the checklist's words. */
    public static String label(ChecklistDraft.Level level) {
        return level.label() == null ? name(level.code()) : level.label();
    }

    /** A finding, or another code, in plain letters: {@code tail-base-wasted} becomes "Tail base wasted". */
    public static String name(String code) {
        String words = code.replace('-', ' ');
        return words.isEmpty() ? words : Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }

    /** With a small letter first, as within a sentence; what is written in capitals stays. */
    public static String small(String words) {
        boolean isCapitals =
                words.length() > 1 && Character.isUpperCase(words.charAt(0)) && Character.isUpperCase(words.charAt(1));
        return words.isEmpty() || isCapitals
                ? words
                : words.substring(0, 1).toLowerCase(Locale.ROOT) + words.substring(1);
    }
}
