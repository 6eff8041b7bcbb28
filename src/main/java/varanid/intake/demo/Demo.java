package varanid.intake.demo;

import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.SmartInitializingSingleton;
import org.springframework.boot.ApplicationArguments;
import org.springframework.stereotype.Component;
import varanid.intake.platform.start.CannotStart;
import varanid.intake.platform.start.HomeFolder;

/** Loads or removes the demo where the start was asked to, before the first request is taken. */
@Component
class Demo implements SmartInitializingSingleton {

    static final String LOAD = "load-demo";
    static final String REMOVE = "remove-demo";

    /** The files in the home folder, as the script names them. */
    static final List<String> TOKEN_FILES = List.of("demo-token", "demo-clinician-token");

    /** Any number that nothing else on the database locks. */
    static final long LOCK = 0x5661_7261_6E69_6402L;

    private static final Logger LOG = LoggerFactory.getLogger(Demo.class);

    private final ApplicationArguments arguments;
    private final DemoLoader loader;
    private final DemoRemover remover;
    private final HomeFolder home;

    Demo(ApplicationArguments arguments, DemoLoader loader, DemoRemover remover, HomeFolder home) {
        this.arguments = arguments;
        this.loader = loader;
        this.remover = remover;
        this.home = home;
    }

    /** With both arguments, a demo that was changed is made anew. */
    @Override
    public void afterSingletonsInstantiated() {
        if (arguments.containsOption(REMOVE)) {
            LOG.info(remove());
        }
        if (arguments.containsOption(LOAD)) {
            LOG.info(load());
        }
    }

    /** What came of it, in words. */
    String load() {
        String files = "Its keeper's token is in %s, its vet's in %s."
                .formatted(home.resolve(TOKEN_FILES.get(0)), home.resolve(TOKEN_FILES.get(1)));
        return loader.load()
                .map(animals ->
                        "The demo was loaded: an organisation of its own with %d animals. %s".formatted(animals, files))
                .orElse("The demo is there already. " + files);
    }

    /** What came of it, in words. */
    String remove() {
        String said = remover.remove()
                .map(rows -> "The demo was removed: its organisation, with all its %d rows.".formatted(rows))
                .orElse("There is no demo to remove.");
        for (String file : TOKEN_FILES) {
            try {
                Files.deleteIfExists(home.resolve(file));
            } catch (IOException e) {
                throw CannotStart.becauseOf(e, home.resolve(file));
            }
        }
        return said;
    }
}
