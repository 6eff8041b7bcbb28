package varanid.intake.page;

import java.net.URI;
import java.net.URISyntaxException;
import org.jspecify.annotations.Nullable;

/**
 * Where somebody wanted to go before they signed in. Only a page of this service: anybody can write a link with another
 * one in it.
 *
 * @param path absolute, perhaps with a query; never another host's
 */
record LocalPath(String path) {

    static final LocalPath HOME = new LocalPath("/");

    private static final int LONGEST = 1000;

    /** What is no such path leads home. */
    static LocalPath of(@Nullable String wanted) {
        if (wanted == null
                || wanted.length() > LONGEST
                || !wanted.startsWith("/")
                || wanted.startsWith("//")
                || wanted.contains("\\")
                || wanted.chars().anyMatch(Character::isISOControl)) {
            return HOME;
        }
        try {
            URI uri = new URI(wanted);
            boolean local = uri.getScheme() == null && uri.getRawAuthority() == null;
            boolean page = !wanted.startsWith("/sign-") && !wanted.startsWith("/api/");
            return local && page ? new LocalPath(uri.toASCIIString()) : HOME;
        } catch (URISyntaxException e) {
            return HOME;
        }
    }
}
