package varanid.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.springframework.modulith.core.ApplicationModule;
import org.springframework.modulith.core.ApplicationModuleDetectionStrategy;
import org.springframework.modulith.core.ApplicationModules;
import org.springframework.modulith.core.JavaPackage;

/** Which package may use which: each feature, and each part of the platform, is a module. */
class ModulesTest {

    /** What each may use, as its package-info says; the whole truth in one place. */
    private static final Map<String, Set<String>> MAY_USE = Map.ofEntries(
            Map.entry("scoring", Set.of()),
            Map.entry("measures", Set.of()),
            Map.entry(
                    "enclosure",
                    Set.of(
                            "platform.reference",
                            "animal",
                            "measures",
                            "platform.database",
                            "platform.id",
                            "platform.time",
                            "platform.web")),
            Map.entry(
                    "weight",
                    Set.of(
                            "platform.reference",
                            "animal",
                            "condition",
                            "measures",
                            "platform.database",
                            "platform.id",
                            "platform.time",
                            "platform.web")),
            Map.entry(
                    "condition",
                    Set.of(
                            "platform.reference",
                            "animal",
                            "measures",
                            "platform.database",
                            "platform.id",
                            "platform.time",
                            "platform.web")),
            Map.entry("infection", Set.of()),
            Map.entry(
                    "quarantine",
                    Set.of(
                            "platform.reference",
                            "account",
                            "animal",
                            "assessment",
                            "diary",
                            "reminder",
                            "sample",
                            "vet",
                            "weight",
                            "platform.database",
                            "platform.id",
                            "platform.time",
                            "platform.web")),
            Map.entry(
                    "reminder",
                    Set.of("account", "animal", "platform.database", "platform.id", "platform.time", "platform.web")),
            Map.entry("platform.start", Set.of()),
            Map.entry("platform.reference", Set.of()),
            Map.entry("platform.time", Set.of()),
            Map.entry("platform.id", Set.of("platform.time")),
            Map.entry("platform.database", Set.of("platform.start")),
            Map.entry("platform.web", Set.of("platform.id", "platform.start", "platform.time")),
            Map.entry("account", Set.of("platform.id", "platform.start", "platform.time", "platform.web")),
            Map.entry(
                    "page",
                    Set.of(
                            "account",
                            "animal",
                            "assessment",
                            "checklist",
                            "attachment",
                            "condition",
                            "diary",
                            "enclosure",
                            "infection",
                            "quarantine",
                            "reminder",
                            "report",
                            "sample",
                            "scoring",
                            "share",
                            "vet",
                            "visit",
                            "weight",
                            "worklist",
                            "platform.time",
                            "platform.web")),
            Map.entry("checklist", Set.of("scoring", "platform.start", "platform.web")),
            Map.entry(
                    "animal",
                    Set.of(
                            "platform.reference",
                            "measures",
                            "platform.database",
                            "platform.id",
                            "platform.time",
                            "platform.web")),
            Map.entry(
                    "assessment",
                    Set.of(
                            "animal",
                            "checklist",
                            "enclosure",
                            "measures",
                            "scoring",
                            "weight",
                            "platform.database",
                            "platform.id",
                            "platform.start",
                            "platform.time",
                            "platform.web")),
            Map.entry(
                    "worklist",
                    Set.of(
                            "platform.reference",
                            "account",
                            "animal",
                            "assessment",
                            "diary",
                            "quarantine",
                            "vet",
                            "weight",
                            "platform.database",
                            "platform.time",
                            "platform.web")),
            Map.entry(
                    "sample",
                    Set.of(
                            "platform.reference",
                            "animal",
                            "infection",
                            "platform.database",
                            "platform.id",
                            "platform.time",
                            "platform.web")),
            Map.entry(
                    "diary",
                    Set.of(
                            "platform.reference",
                            "animal",
                            "assessment",
                            "platform.database",
                            "platform.id",
                            "platform.time",
                            "platform.web")),
            Map.entry(
                    "vet",
                    Set.of(
                            "platform.reference",
                            "animal",
                            "assessment",
                            "checklist",
                            "scoring",
                            "share",
                            "platform.database",
                            "platform.id",
                            "platform.time",
                            "platform.web")),
            Map.entry(
                    "report",
                    Set.of(
                            "platform.reference",
                            "animal",
                            "measures",
                            "platform.database",
                            "platform.id",
                            "platform.time",
                            "platform.web")),
            Map.entry(
                    "attachment",
                    Set.of(
                            "animal",
                            "assessment",
                            "sample",
                            "platform.database",
                            "platform.id",
                            "platform.time",
                            "platform.web")),
            Map.entry(
                    "visit",
                    Set.of(
                            "platform.reference",
                            "account",
                            "animal",
                            "assessment",
                            "attachment",
                            "checklist",
                            "diary",
                            "enclosure",
                            "quarantine",
                            "report",
                            "sample",
                            "scoring",
                            "share",
                            "vet",
                            "weight",
                            "platform.time",
                            "platform.web")),
            Map.entry("share", Set.of("account", "animal", "platform.id", "platform.reference", "platform.web")),
            Map.entry(
                    "cagecard",
                    Set.of(
                            "account",
                            "animal",
                            "quarantine",
                            "report",
                            "visit",
                            "platform.reference",
                            "platform.time",
                            "platform.web")),
            Map.entry(
                    "demo",
                    Set.of(
                            "account",
                            "animal",
                            "assessment",
                            "condition",
                            "diary",
                            "enclosure",
                            "quarantine",
                            "report",
                            "sample",
                            "vet",
                            "weight",
                            "platform.id",
                            "platform.start",
                            "platform.web")));

    private static ApplicationModules modules;

    @BeforeAll
    static void readThem() {
        System.setProperty("spring.modulith.detection-strategy", EachPartOfThePlatformByItself.class.getName());
        modules = ApplicationModules.of(VaranidIntake.class);
    }

    @Test
    void noModuleReachesIntoAnotherOrGoesInCircles() {
        modules.verify();
    }

    @Test
    void eachUsesOnlyWhatItMay() {
        Map<String, Set<String>> tooMuch = new TreeMap<>();
        for (ApplicationModule module : modules) {
            Set<String> used = module.getDirectDependencies(modules)
                    .uniqueModules()
                    .map(ModulesTest::name)
                    .collect(Collectors.toCollection(TreeSet::new));
            assertThat(MAY_USE).containsKey(name(module));
            used.removeAll(MAY_USE.get(name(module)));
            if (!used.isEmpty()) {
                tooMuch.put(name(module), used);
            }
        }
        assertThat(tooMuch).isEmpty();
    }

    @Test
    void everyModuleIsListed() {
        assertThat(modules.stream().map(ModulesTest::name)).containsExactlyInAnyOrderElementsOf(MAY_USE.keySet());
    }

    private static String name(ApplicationModule module) {
        return module.getBasePackage().getName().substring("varanid.intake.".length());
    }

    /** The features, and the platform's parts instead of the platform. Made by Spring Modulith. */
    static final class EachPartOfThePlatformByItself implements ApplicationModuleDetectionStrategy {

        @Override
        public Stream<JavaPackage> getModuleBasePackages(JavaPackage root) {
            return root.getDirectSubPackages().stream()
                    .flatMap(each -> each.getLocalName().equals("platform")
                            ? each.getDirectSubPackages().stream()
                            : Stream.of(each));
        }
    }
}
