package varanid.intake.platform.web;

import jakarta.servlet.http.HttpServletRequest;
import java.net.URI;
import java.net.URISyntaxException;
import java.util.Optional;
import java.util.regex.Pattern;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;
import varanid.intake.platform.start.CannotStart;

/**
 * Where people outside reach this service, for links that are given out. Configured by {@code
 * varanid.intake.public-address}; else what the request itself was sent to.
 */
@Component
public class PublicAddress {

    private static final Pattern HOST =
            Pattern.compile("[A-Za-z0-9]([A-Za-z0-9.-]{0,251}[A-Za-z0-9])?|\\[[0-9A-Fa-f:.]+]");
    private static final int HTTP = 80;
    private static final int HTTPS = 443;

    private final String configured;

    PublicAddress(@Value("${varanid.intake.public-address:}") String configured) {
        this.configured = configured.isBlank() ? "" : checked(configured.strip());
    }

    private static String checked(String address) {
        try {
            URI uri = new URI(address);
            boolean web = "https".equals(uri.getScheme()) || "http".equals(uri.getScheme());
            if (web
                    && uri.getHost() != null
                    && uri.getQuery() == null
                    && uri.getFragment() == null
                    && uri.getUserInfo() == null) {
                return address.endsWith("/") ? address.substring(0, address.length() - 1) : address;
            }
        } catch (URISyntaxException e) {
            // told below
        }
        throw new CannotStart(
                "The setting varanid.intake.public-address (VARANID_INTAKE_PUBLIC_ADDRESS) is no web address: "
                        + address + ".",
                "Set it to what people type to reach this service, such as https://intake.example.org, without"
                        + " anything after a ? or #, or leave it out.");
    }

    /**
     * The address of a path of this service.
     *
     * @param path absolute, already encoded
     * @throws ProblemException 400 where the request names no host that could be one
     */
    public URI resolve(HttpServletRequest request, String path) {
        return URI.create((configured.isEmpty() ? of(request) : configured) + path);
    }

    /** What is configured, without a slash at its end. */
    public Optional<String> configured() {
        return configured.isEmpty() ? Optional.empty() : Optional.of(configured);
    }

    /** Whether people reach the service by https, as far as that is configured. */
    boolean isHttps() {
        return configured.startsWith("https:");
    }

    private static String of(HttpServletRequest request) {
        String host = request.getServerName();
        if (host == null || !HOST.matcher(host).matches()) {
            throw ProblemException.malformed("The header Host names no host.");
        }
        int port = request.getServerPort();
        boolean usual = request.getScheme().equals("https") ? port == HTTPS : port == HTTP;
        return request.getScheme() + "://" + host + (usual ? "" : ":" + port);
    }
}
