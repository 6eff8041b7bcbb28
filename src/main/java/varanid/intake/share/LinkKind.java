package varanid.intake.share;

import java.util.Locale;

/** What a link opens. */
public enum LinkKind {
    /** The summary, to read. */
    SUMMARY("vs1", "/summary/"),
    /** A form for a vet's answer. */
    REPLY("vr1", "/reply/");

    private final String prefix;
    private final String path;

    LinkKind(String prefix, String path) {
        this.prefix = prefix;
        this.path = path;
    }

    /** The word for it in requests and replies. */
    public String code() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** How its secrets begin. */
    String prefix() {
        return prefix;
    }

    /** Where it opens, without the secret. */
    public String path() {
        return path;
    }

    static LinkKind get(String code) {
        return valueOf(code.toUpperCase(Locale.ROOT));
    }
}
