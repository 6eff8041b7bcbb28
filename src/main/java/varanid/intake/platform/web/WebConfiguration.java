package varanid.intake.platform.web;

import com.fasterxml.jackson.annotation.JsonInclude;
import jakarta.servlet.MultipartConfigElement;
import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import org.apache.catalina.connector.Request;
import org.apache.catalina.connector.Response;
import org.apache.catalina.valves.ErrorReportValve;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.jackson.autoconfigure.JsonMapperBuilderCustomizer;
import org.springframework.boot.tomcat.servlet.TomcatServletWebServerFactory;
import org.springframework.boot.web.server.WebServerFactoryCustomizer;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.MethodParameter;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.converter.HttpMessageConverters;
import org.springframework.http.converter.yaml.JacksonYamlHttpMessageConverter;
import org.springframework.scheduling.annotation.EnableScheduling;
import org.springframework.web.bind.support.WebDataBinderFactory;
import org.springframework.web.context.request.NativeWebRequest;
import org.springframework.web.method.support.HandlerMethodArgumentResolver;
import org.springframework.web.method.support.ModelAndViewContainer;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;
import tools.jackson.core.StreamWriteFeature;
import tools.jackson.databind.MapperFeature;

/** What controllers can take as parameters, how JSON is written, and what the container says by itself. */
@Configuration(proxyBeanMethods = false)
@EnableScheduling
class WebConfiguration implements WebMvcConfigurer {

    @Override
    public void addArgumentResolvers(List<HandlerMethodArgumentResolver> resolvers) {
        resolvers.add(new JsonRequestResolver());
        resolvers.add(new Parameter<>(Caller.class, request -> caller()));
        resolvers.add(new Parameter<>(Query.class, request -> Query.of(Requests.servlet(request))));
        resolvers.add(new Parameter<>(FileUpload.class, request -> {
            HttpServletRequest sent = Requests.servlet(request);
            return new FileUpload(sent, JsonRequestResolver.key(sent));
        }));
        resolvers.add(new Parameter<>(IfMatch.class, request -> ifMatch(request.getHeader("If-Match"))));
    }

    /**
     * What the container takes at most where a controller asks for a file; nothing else asks. Every file is on the disk
     * while it comes.
     */
    @Bean
    MultipartConfigElement files() {
        return new MultipartConfigElement(
                "", FileUpload.LARGEST_FILE, FileUpload.LARGEST_FILE + FileUpload.LARGEST_REST, 0);
    }

    /** JSON and nothing else: that YAML can be read here is because of the checklists. */
    @Override
    public void configureMessageConverters(HttpMessageConverters.ServerBuilder builder) {
        builder.configureMessageConvertersList(
                converters -> converters.removeIf(JacksonYamlHttpMessageConverter.class::isInstance));
    }

    private static Caller caller() {
        return Sessions.findCaller()
                .orElseThrow(() ->
                        new ProblemException(ProblemType.UNAUTHENTICATED, "Send a token as Authorization: Bearer."));
    }

    private static IfMatch ifMatch(@Nullable String header) {
        if (header == null) {
            throw new ProblemException(
                    ProblemType.PRECONDITION_REQUIRED, "Send If-Match with the ETag of the version you have read.");
        }
        return IfMatch.parse(header);
    }

    /** Fields in the order of the record, those without a value left out, decimals without exponents. */
    @Bean
    JsonMapperBuilderCustomizer plainJson() {
        return json -> json.disable(MapperFeature.SORT_PROPERTIES_ALPHABETICALLY)
                .enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN)
                .changeDefaultPropertyInclusion(all -> all.withValueInclusion(JsonInclude.Include.NON_NULL));
    }

    /** What Tomcat refuses before any of our code runs, such as an unreadable request line. */
    @Bean
    @Order(Ordered.LOWEST_PRECEDENCE)
    WebServerFactoryCustomizer<TomcatServletWebServerFactory> containerProblems() {
        return factory -> factory.addContextCustomizers(
                context -> context.getParent().getPipeline().addValve(new ContainerProblems()));
    }

    private record Parameter<T>(Class<T> type, Function<NativeWebRequest, T> value)
            implements HandlerMethodArgumentResolver {

        @Override
        public boolean supportsParameter(MethodParameter parameter) {
            return parameter.getParameterType() == type;
        }

        @Override
        public T resolveArgument(
                MethodParameter parameter,
                @Nullable ModelAndViewContainer container,
                NativeWebRequest request,
                @Nullable WebDataBinderFactory binders) {
            return Objects.requireNonNull(value.apply(request));
        }
    }

    /** A problem instead of Tomcat's page. There is no JSON mapper here, and nothing of the request is repeated. */
    private static final class ContainerProblems extends ErrorReportValve {

        @Override
        protected void report(Request request, Response response, @Nullable Throwable throwable) {
            int status = response.getStatus();
            if (status < 400 || response.getContentWritten() > 0 || !response.setErrorReported()) {
                return;
            }
            ProblemException problem = ProblemAdvice.ofStatus(HttpStatusCode.valueOf(status));
            String body = "{\"type\":\"%s\",\"title\":\"%s\",\"status\":%d,\"detail\":\"%s\"}"
                    .formatted(problem.type().uri(), problem.type().title(), status, problem.detail());
            try {
                response.setContentType(Problem.MEDIA_TYPE);
                response.setCharacterEncoding("UTF-8");
                response.getReporter().write(body);
                response.finishResponse();
            } catch (IOException e) {
                container.getLogger().debug("the sender is gone", e);
            }
        }
    }
}
