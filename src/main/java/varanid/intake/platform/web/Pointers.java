package varanid.intake.platform.web;

import java.nio.charset.StandardCharsets;
import java.util.Locale;

/** JSON Pointers in their URI fragment form (RFC 6901 sections 3 and 6). */
final class Pointers {

    private static final String ALLOWED = "-._~!$&'()*+,;=:@/?";
    private static final int LONGEST_NAME = 100;

    private Pointers() {}

    /** One reference token, escaped; a very long name is cut, since it is only named to be found again. */
    static String escape(String name) {
        String cut = name.length() > LONGEST_NAME ? name.substring(0, LONGEST_NAME) : name;
        String token = cut.replace("~", "~0").replace("/", "~1");
        StringBuilder result = new StringBuilder();
        for (byte each : token.getBytes(StandardCharsets.UTF_8)) {
            char character = (char) (each & 0xFF);
            if ((character < 128 && Character.isLetterOrDigit(character)) || ALLOWED.indexOf(character) >= 0) {
                result.append(character);
            } else {
                result.append(String.format(Locale.ROOT, "%%%02X", each & 0xFF));
            }
        }
        return result.toString();
    }
}
