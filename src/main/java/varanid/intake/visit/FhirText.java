package varanid.intake.visit;

import java.util.ArrayDeque;
import java.util.Deque;

/**
 * Texts that people typed, made fit for FHIR and for the XHTML of its narratives without losing a visible sign.
 *
 * <p>What neither may hold (control characters, halves of surrogate pairs) is replaced by U+FFFD, so that a reader sees
 * that something stood there. What turns the writing direction and does not turn it back is turned back at the end of the
 * text, so that it cannot reorder what comes after.
 */
final class FhirText {

    private static final char REPLACEMENT = '\uFFFD';
    private static final char NEXT_LINE = '\u0085';
    private static final char POP_DIRECTION = '\u202C';
    private static final char POP_ISOLATE = '\u2069';
    private static final String MARKDOWN = "\\`*_[]<>#|~";

    private FhirText() {}

    /** A FHIR {@code string}: no control characters but tab and line feed, no blanks at either end; may be empty. */
    static String string(String text) {
        return balanced(clean(text)).strip();
    }

    /** FHIR {@code markdown} that shows exactly this text. */
    static String markdown(String text) {
        StringBuilder escaped = new StringBuilder(text.length());
        string(text).chars().forEach(sign -> {
            if (MARKDOWN.indexOf(sign) >= 0) {
                escaped.append('\\');
            }
            escaped.append((char) sign);
        });
        return escaped.toString();
    }

    /** Text within an XHTML element or attribute; its lines stay lines. */
    static String xhtml(String text) {
        return string(text)
                .replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;")
                .replace("\n", "<br/>");
    }

    private static String clean(String text) {
        StringBuilder clean = new StringBuilder(text.length());
        text.replace("\r\n", "\n")
                .replace('\r', '\n')
                .replace(NEXT_LINE, '\n')
                .codePoints()
                .forEach(sign -> clean.appendCodePoint(isAllowed(sign) ? sign : REPLACEMENT));
        return clean.toString();
    }

    /** XML 1.0, section 2.2, without the control characters of the second half of Latin-1 and without noncharacters. */
    private static boolean isAllowed(int sign) {
        if (sign < 0x20) {
            return sign == '\t' || sign == '\n';
        }
        boolean control = sign >= 0x7F && sign <= 0x9F;
        boolean halfOfPair = sign >= 0xD800 && sign <= 0xDFFF;
        boolean noncharacter = (sign & 0xFFFE) == 0xFFFE || (sign >= 0xFDD0 && sign <= 0xFDEF);
        return !control && !halfOfPair && !noncharacter;
    }

    /** Unicode Standard Annex 9: what an embedding, override or isolate opens is closed, and what opens nothing is dropped. */
    private static String balanced(String text) {
        StringBuilder balanced = new StringBuilder(text.length());
        Deque<Character> open = new ArrayDeque<>();
        text.chars().forEach(each -> {
            char sign = (char) each;
            if (sign == '\n') {
                closeAll(open, balanced);
                balanced.append(sign);
            } else if (sign >= '\u202A' && sign <= '\u202E' && sign != POP_DIRECTION) {
                open.push(POP_DIRECTION);
                balanced.append(sign);
            } else if (sign >= '\u2066' && sign <= '\u2068') {
                open.push(POP_ISOLATE);
                balanced.append(sign);
            } else if (sign == POP_DIRECTION || sign == POP_ISOLATE) {
                if (!open.isEmpty() && open.peek() == sign) {
                    open.pop();
                    balanced.append(sign);
                }
            } else {
                balanced.append(sign);
            }
        });
        closeAll(open, balanced);
        return balanced.toString();
    }

    private static void closeAll(Deque<Character> open, StringBuilder text) {
        while (!open.isEmpty()) {
            text.append(open.pop().charValue());
        }
    }
}
