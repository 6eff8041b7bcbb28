package varanid.intake.platform.web;

import java.util.regex.Pattern;

/** How people are reached, as they write it. */
public final class Contacts {

    /** What people write between the digits of a number; what it means is nobody's guess. */
    private static final Pattern PHONE = Pattern.compile("[0-9+()/.,;:#*\\-\\p{L} ]*[0-9][0-9+()/.,;:#*\\-\\p{L} ]*");

    private static final int LONGEST_PHONE = 60;

    private Contacts() {}

    /** A telephone number of a request, of at most 60 characters. */
    public static Given<String> phone(JsonFields fields, String name) {
        return fields.text(name, LONGEST_PHONE)
                .check(
                        text -> PHONE.matcher(text).matches(),
                        "is no telephone number: it has no digit, or signs that none has",
                        "the number as it is dialled, such as +44 1632 960000 ext. 3");
    }
}
