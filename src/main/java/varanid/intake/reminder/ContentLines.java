package varanid.intake.reminder;

/** Content lines of RFC 5545: escaped, folded, ended by CR LF. */
final class ContentLines {

    /** Octets of a line without its end (RFC 5545, 3.1). */
    private static final int MOST_OCTETS = 75;

    private final StringBuilder written = new StringBuilder();

    /** A property whose value is no free text. */
    void raw(String property, String value) {
        fold(property + ":" + value);
    }

    /** A property of type TEXT. */
    void text(String property, String value) {
        fold(property + ":" + escape(value));
    }

    /** Backslash, semicolon and comma are escaped, ends of lines become {@code \n}, other control characters go. */
    static String escape(String text) {
        StringBuilder escaped = new StringBuilder();
        text.replace("\r\n", "\n").codePoints().forEach(character -> {
            switch (character) {
                case '\\' -> escaped.append("\\\\");
                case ';' -> escaped.append("\\;");
                case ',' -> escaped.append("\\,");
                case '\n', '\r', 0x85, 0x2028, 0x2029 -> escaped.append("\\n");
                default -> {
                    if (character >= Character.MIN_SURROGATE && character <= Character.MAX_SURROGATE) {
                        // Half a character has no UTF-8.
                        escaped.append('\uFFFD');
                    } else if (character == '\t' || !Character.isISOControl(character)) {
                        escaped.appendCodePoint(character);
                    }
                }
            }
        });
        return escaped.toString();
    }

    private void fold(String line) {
        int octets = 0;
        for (int i = 0; i < line.length(); ) {
            int character = line.codePointAt(i);
            int width = utf8Octets(character);
            if (octets + width > MOST_OCTETS) {
                written.append("\r\n ");
                octets = 1;
            }
            written.appendCodePoint(character);
            octets += width;
            i += Character.charCount(character);
        }
        written.append("\r\n");
    }

    private static int utf8Octets(int character) {
        if (character < 0x80) {
            return 1;
        }
        if (character < 0x800) {
            return 2;
        }
        return character < 0x10000 ? 3 : 4;
    }

    @Override
    public String toString() {
        return written.toString();
    }
}
