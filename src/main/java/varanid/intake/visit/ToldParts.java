package varanid.intake.visit;

import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.annotation.Order;

/** Which part each thing that was told belongs into. Beside what was observed it stands second. */
@Configuration(proxyBeanMethods = false)
class ToldParts {

    @Bean
    PartReader toldFindings(Records records, ToldStatements told) {
        return new ToldPart(Part.FINDINGS, records, told::ofFindings);
    }

    @Bean
    PartReader toldIntakeAndOutput(Records records, ToldStatements told) {
        return new ToldPart(Part.INTAKE_AND_OUTPUT, records, told::ofIntakeAndOutput);
    }

    @Bean
    PartReader toldTreatments(Records records, ToldStatements told) {
        return new ToldPart(Part.TREATMENTS, records, told::ofTreatments);
    }

    @Bean
    PartReader toldSurroundings(Records records, ToldStatements told) {
        return new ToldPart(Part.SURROUNDINGS, records, told::ofSurroundings);
    }

    @Bean
    PartReader toldOrigin(Records records, ToldStatements told) {
        return new ToldPart(Part.ORIGIN, records, told::ofOrigin);
    }

    @Bean
    @Order(5)
    PartReader toldHandling(Records records, ToldStatements told) {
        return new ToldPart(Part.HANDLING, records, told::ofHandling);
    }

    @Bean
    PartReader toldQuestions(Records records, ToldStatements told) {
        return new ToldPart(Part.QUESTIONS, records, told::ofQuestions);
    }

    @Bean
    @Order(10)
    PartReader toldConsentAndContact(Records records, ToldStatements told) {
        return new ToldPart(Part.CONSENT_AND_CONTACT, records, told::ofConsentAndContact);
    }
}
