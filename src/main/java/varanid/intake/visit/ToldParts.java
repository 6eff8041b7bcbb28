package varanid.intake.visit;

import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.annotation.Order;
import varanid.intake.report.Reports;

/** Which part each thing that was told belongs into. Beside what was observed it stands second. */
@Configuration(proxyBeanMethods = false)
class ToldParts {

    @Bean
    PartReader toldFindings(Reports reports, ToldStatements told) {
        return new ToldPart(Part.FINDINGS, reports, told::ofFindings);
    }

    @Bean
    PartReader toldIntakeAndOutput(Reports reports, ToldStatements told) {
        return new ToldPart(Part.INTAKE_AND_OUTPUT, reports, told::ofIntakeAndOutput);
    }

    @Bean
    PartReader toldTreatments(Reports reports, ToldStatements told) {
        return new ToldPart(Part.TREATMENTS, reports, told::ofTreatments);
    }

    @Bean
    PartReader toldSurroundings(Reports reports, ToldStatements told) {
        return new ToldPart(Part.SURROUNDINGS, reports, told::ofSurroundings);
    }

    @Bean
    PartReader toldOrigin(Reports reports, ToldStatements told) {
        return new ToldPart(Part.ORIGIN, reports, told::ofOrigin);
    }

    @Bean
    @Order(5)
    PartReader toldHandling(Reports reports, ToldStatements told) {
        return new ToldPart(Part.HANDLING, reports, told::ofHandling);
    }

    @Bean
    PartReader toldQuestions(Reports reports, ToldStatements told) {
        return new ToldPart(Part.QUESTIONS, reports, told::ofQuestions);
    }

    @Bean
    @Order(10)
    PartReader toldConsentAndContact(Reports reports, ToldStatements told) {
        return new ToldPart(Part.CONSENT_AND_CONTACT, reports, told::ofConsentAndContact);
    }
}
