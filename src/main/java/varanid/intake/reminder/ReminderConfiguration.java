package varanid.intake.reminder;

import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import varanid.intake.platform.web.SecretPath;

@Configuration(proxyBeanMethods = false)
class ReminderConfiguration {

    @Bean
    SecretPath calendarPath() {
        return new SecretPath(FeedController.PATH + "*");
    }
}
