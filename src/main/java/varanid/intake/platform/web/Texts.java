package varanid.intake.platform.web;

import java.text.Normalizer;
import java.util.Optional;
import java.util.stream.Collectors;

/** What counts as text in a request. */
final class Texts {

    private static final int LONGEST_QUOTE = 60;

    private Texts() {}

    /** The text in normal form C without blanks around it. */
    static String tidy(String text) {
        return Normalizer.normalize(text, Normalizer.Form.NFC).strip();
    }

    /** What is wrong with its characters: PostgreSQL refuses NUL, and no reader can show the others. */
    static Optional<String> forbiddenCharacter(String text, boolean lines) {
        return text.codePoints()
                .filter(point -> !isAllowed(point, lines))
                .mapToObj(point -> String.format("contains the character U+%04X", point))
                .findFirst();
    }

    private static boolean isAllowed(int point, boolean lines) {
        if (point == '\n' || point == '\t' || point == '\r') {
            return lines;
        }
        return !Character.isISOControl(point)
                && Character.getType(point) != Character.SURROGATE
                && (point & 0xFFFE) != 0xFFFE;
    }

    static int length(String text) {
        return text.codePointCount(0, text.length());
    }

    /** What a person sent, safe and short enough to be sent back. */
    static String quote(String text) {
        return "“" + visible(text, LONGEST_QUOTE) + "”";
    }

    /** The beginning of a text, without what cannot be shown. */
    static String visible(String text, int longest) {
        String shown = text.codePoints()
                .limit(longest)
                .mapToObj(point -> isAllowed(point, false) ? Character.toString(point) : "\uFFFD")
                .collect(Collectors.joining());
        return length(text) > longest ? shown + "…" : shown;
    }
}
