package varanid.intake.quarantine;

import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

@Configuration(proxyBeanMethods = false)
class QuarantineConfiguration {

    /** The policy that the program is shipped with; a faulty one stops the start. */
    @Bean
    QuarantinePolicy quarantinePolicy() {
        return PolicyFile.read();
    }
}
