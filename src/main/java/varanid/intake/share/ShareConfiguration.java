package varanid.intake.share;

import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import varanid.intake.platform.web.SecretPath;

@Configuration(proxyBeanMethods = false)
class ShareConfiguration {

    @Bean
    SecretPath summaryPath() {
        return new SecretPath(LinkKind.SUMMARY.path() + "*");
    }

    @Bean
    SecretPath replyPath() {
        return new SecretPath(LinkKind.REPLY.path() + "*", true);
    }
}
