package varanid.intake;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZonedDateTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What computes knows nothing of Spring, HTTP or a database; and nobody reads the machine's clock behind our back. */
class PurePackagesTest {

    private static final JavaClasses OURS = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("varanid.intake");

    @ParameterizedTest
    @ValueSource(strings = {"scoring", "measures"})
    void aPurePackageUsesTheJdkAndItselfAlone(String name) {
        classes()
                .that()
                .resideInAPackage("varanid.intake." + name + "..")
                .should()
                .onlyDependOnClassesThat()
                .resideInAnyPackage("java..", "org.jspecify..", "varanid.intake." + name + "..")
                .check(OURS);
    }

    @Test
    void thePlatformKnowsNoFeature() {
        noClasses()
                .that()
                .resideInAPackage("varanid.intake.platform..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(
                        "varanid.intake.account..",
                        "varanid.intake.animal..",
                        "varanid.intake.assessment..",
                        "varanid.intake.checklist..",
                        "varanid.intake.demo..",
                        "varanid.intake.scoring..",
                        "varanid.intake.measures..")
                .check(OURS);
    }

    @Test
    void timeComesFromTheInjectedClock() {
        noClasses()
                .should()
                .callMethod(Instant.class, "now")
                .orShould()
                .callMethod(LocalDate.class, "now")
                .orShould()
                .callMethod(LocalDateTime.class, "now")
                .orShould()
                .callMethod(ZonedDateTime.class, "now")
                .orShould()
                .callMethod(System.class, "currentTimeMillis")
                .check(OURS);
    }
}
