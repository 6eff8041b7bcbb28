package varanid.intake.platform.web;

import org.jspecify.annotations.Nullable;

/** The version of something that can change, and its strong {@code ETag}. */
public final class Version {

    private Version() {}

    /**
     * The entity tag of a row's version.
     *
     * @param version as the {@code @Version} column has it, after the flush
     */
    public static String tag(@Nullable Long version) {
        if (version == null) {
            throw new IllegalStateException("not stored yet");
        }
        return "\"v" + version + "\"";
    }
}
