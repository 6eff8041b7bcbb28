package varanid.intake.platform.web;

/** Text that is put into a drawing or a page by hand. */
public final class Markup {

    private Markup() {}

    /** The text for an element or a quoted attribute; what XML cannot hold becomes a replacement character. */
    public static String escape(String text) {
        StringBuilder escaped = new StringBuilder(text.length() + 16);
        clean(text).codePoints().forEach(c -> {
            switch (c) {
                case '<' -> escaped.append("&lt;");
                case '>' -> escaped.append("&gt;");
                case '&' -> escaped.append("&amp;");
                case '"' -> escaped.append("&quot;");
                case '\'' -> escaped.append("&#39;");
                default -> escaped.appendCodePoint(c);
            }
        });
        return escaped.toString();
    }

    /** Without the characters that XML 1.0 has no place for (section 2.2). */
    public static String clean(String text) {
        StringBuilder clean = new StringBuilder(text.length());
        text.codePoints().forEach(c -> clean.appendCodePoint(isXml(c) ? c : 0xFFFD));
        return clean.toString();
    }

    private static boolean isXml(int c) {
        return c == '\t'
                || c == '\n'
                || c == '\r'
                || c >= 0x20 && c <= 0xD7FF
                || c >= 0xE000 && c <= 0xFFFD
                || c >= 0x10000;
    }
}
