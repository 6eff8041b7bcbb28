package varanid.intake.account;

import java.net.InetAddress;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.boot.web.server.context.WebServerApplicationContext;
import org.springframework.context.event.EventListener;
import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;
import varanid.intake.platform.start.HomeFolder;

/** Says, once the service answers, where it is and what opens it. */
@Component
class WhereToGoNext {

    private final HomeFolder home;

    WhereToGoNext(HomeFolder home) {
        this.home = home;
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
        System.out.println(text(address, home.resolve(FirstStart.TOKEN_FILE).toString()));
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
