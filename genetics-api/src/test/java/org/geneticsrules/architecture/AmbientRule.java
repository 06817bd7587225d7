package org.geneticsrules.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;

import com.tngtech.archunit.core.domain.AccessTarget.CodeUnitAccessTarget;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * The same question has the same answer everywhere and always. So no class asks its surroundings for a clock, a locale, a
 * character set or chance, and none uses a collection that iterates in an order of its own.
 */
final class AmbientRule {
    /** Owner, then method, constructor or field; with parameter types where only that overload is forbidden. */
    private static final Set<String> FORBIDDEN = Set.of(
            // These iterate in an order that differs from run to run, or from JDK to JDK.
            "java.util.Map.copyOf",
            "java.util.Set.copyOf",
            "java.util.stream.Collectors.toSet",
            "java.util.stream.Collectors.toUnmodifiableMap",
            "java.util.stream.Collectors.toUnmodifiableSet",
            // Chance without a seed.
            "java.lang.Math.random",
            "java.lang.StrictMath.random",
            "java.security.SecureRandom.<init>",
            "java.util.Collections.shuffle(java.util.List)",
            "java.util.Random.<init>()",
            "java.util.SplittableRandom.<init>()",
            "java.util.UUID.randomUUID",
            "java.util.concurrent.ThreadLocalRandom.current",
            "java.util.random.RandomGenerator.getDefault",
            "java.util.random.RandomGenerator.of",
            "java.util.random.RandomGeneratorFactory.create()",
            "java.util.random.RandomGeneratorFactory.getDefault",
            // The machine's clock and time zone.
            "java.lang.System.currentTimeMillis",
            "java.lang.System.nanoTime",
            "java.time.Clock.systemDefaultZone",
            "java.time.Clock.systemUTC",
            "java.time.Instant.now()",
            "java.time.LocalDate.now()",
            "java.time.LocalDateTime.now()",
            "java.time.LocalTime.now()",
            "java.time.OffsetDateTime.now()",
            "java.time.Year.now()",
            "java.time.YearMonth.now()",
            "java.time.ZoneId.systemDefault",
            "java.time.ZonedDateTime.now()",
            "java.util.Date.<init>()",
            "java.util.TimeZone.getDefault",
            // The machine's language.
            "java.lang.String.format(java.lang.String, [Ljava.lang.Object;)",
            "java.lang.String.formatted",
            "java.lang.String.toLowerCase()",
            "java.lang.String.toUpperCase()",
            "java.util.Locale.getDefault",
            // The machine's character set.
            "java.lang.String.<init>([B)",
            "java.lang.String.getBytes()",
            "java.nio.charset.Charset.defaultCharset",
            // Diagnostics go to a System.Logger.
            "java.lang.System.err",
            "java.lang.System.out",
            "java.lang.Throwable.printStackTrace()");

    private AmbientRule() {}

    static ArchRule noAmbientState() {
        return classes().should(new ArchCondition<JavaClass>("not depend on the surroundings") {
            @Override
            public void check(JavaClass item, ConditionEvents events) {
                for (JavaAccess<?> access : item.getAccessesFromSelf()) {
                    String name = access.getTargetOwner().getName() + "."
                            + access.getTarget().getName();
                    if (FORBIDDEN.contains(name) || FORBIDDEN.contains(name + parameters(access))) {
                        events.add(SimpleConditionEvent.violated(item, access.getDescription()));
                    }
                }
            }
        });
    }

    private static String parameters(JavaAccess<?> access) {
        if (access.getTarget() instanceof CodeUnitAccessTarget target) {
            return target.getRawParameterTypes().stream()
                    .map(JavaClass::getName)
                    .collect(Collectors.joining(", ", "(", ")"));
        }
        return "";
    }
}
