package varanid.intake.account;

import java.net.InetAddress;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.UUID;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.boot.web.server.context.WebServerApplicationContext;
import org.springframework.context.event.EventListener;
import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;
import org.springframework.util.StringUtils;
import varanid.intake.platform.start.HomeFolder;
import varanid.intake.platform.web.PublicAddress;

/** Says, once the service answers, where it is and what opens it. */
@Component
class WhereToGoNext {

    /** Time to find the window it is printed in, and little more: whoever reads the output later finds it useless. */
    private static final Duration LINK_LIFE = Duration.ofMinutes(15);

    private final HomeFolder home;
    private final Organisations organisations;
    private final People people;
    private final SignInLinks links;
    private final List<OthersAtTheMachine> others;
    private final PublicAddress publicAddress;
    private final Clock clock;

    WhereToGoNext(
            HomeFolder home,
            Organisations organisations,
            People people,
            SignInLinks links,
            List<OthersAtTheMachine> others,
            PublicAddress publicAddress,
            Clock clock) {
        this.home = home;
        this.organisations = organisations;
        this.people = people;
        this.links = links;
        this.others = others;
        this.publicAddress = publicAddress;
        this.clock = clock;
    }

    @EventListener
    void say(ApplicationReadyEvent ready) {
        if (!(ready.getApplicationContext() instanceof WebServerApplicationContext context)
                || context.getWebServer() == null) {
            return;
        }
        Environment environment = ready.getApplicationContext().getEnvironment();
        String address =
                "http://" + host(environment) + ":" + context.getWebServer().getPort();
        System.out.println(text(address, home.resolve(FirstStart.TOKEN_FILE).toString())
                + (isOnItsOwn(environment) ? signIn(publicAddress.configured().orElse(address)) : ""));
    }

    /**
     * Whether the service keeps its own database: then whoever started it is the one it is for. Elsewhere the output may
     * go to others, who are not to sign in by reading it.
     */
    private static boolean isOnItsOwn(Environment environment) {
        return !StringUtils.hasText(environment.getProperty("spring.datasource.url"));
    }

    private String signIn(String address) {
        StringBuilder said = new StringBuilder();
        organisations.findByMadeAtFirstStartTrue().ifPresent(organisation -> {
            UUID id = organisation.organisationId();
            UUID administrator = people.listActiveAdministrators(id).get(0).id();
            said.append(signInText(address + path(id, administrator)));
        });
        others.stream()
                .flatMap(list -> list.list().stream())
                .forEach(other ->
                        said.append(otherText(other.name(), address + path(other.organisationId(), other.personId()))));
        return said.toString();
    }

    private String path(UUID organisationId, UUID personId) {
        return links.make(organisationId, personId, null, clock.instant().plus(LINK_LIFE))
                .path();
    }

    static String signInText(String link) {
        return """
                  sign in with a browser, once, within %d minutes; a new start prints a new link:
                  %s
                """.formatted(LINK_LIFE.toMinutes(), link);
    }

    private static String otherText(String name, String link) {
        return "  the same in the demo, as %s:%n  %s%n".formatted(name, link);
    }

    private static String host(Environment environment) {
        String named = environment.getProperty("server.address", "127.0.0.1");
        return named.equals("0.0.0.0") || named.equals("::")
                ? InetAddress.getLoopbackAddress().getHostAddress()
                : named;
    }

    static String text(String address, String tokenFile) {
        return """

                Varanid Intake answers at %1$s

                  the API's description   %1$s/v3/api-docs
                  an administrator's token is in %2$s
                  a first request         curl -H "Authorization: Bearer $(cat '%2$s')" %1$s/api/v1/organisation
                  token lost or seen      start once with --reissue-token
                  a demo to try it on     start once with --load-demo; --remove-demo removes it again
                """.formatted(address, tokenFile);
    }
}
