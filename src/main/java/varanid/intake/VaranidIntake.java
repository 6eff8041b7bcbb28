package varanid.intake;

import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;

/** Starts the service. */
@SpringBootApplication
public class VaranidIntake {

    public static void main(String[] arguments) {
        SpringApplication.run(VaranidIntake.class, arguments);
    }
}
