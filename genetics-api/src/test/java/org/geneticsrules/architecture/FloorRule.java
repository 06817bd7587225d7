package org.geneticsrules.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;

import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.util.Map;
import java.util.Optional;

/**
 * Packages stand on numbered floors; a package uses only packages on lower floors. Two packages of one floor do not know each
 * other. A package that has no floor is an error, so that nobody adds one without deciding where it stands.
 */
final class FloorRule {
    /** The floors of the library: the first name below {@value Compiled#ROOT}, and its number. */
    static final Map<String, Integer> LIBRARY = Map.ofEntries(
            Map.entry("probability", 1),
            Map.entry("evidence", 1),
            Map.entry("problem", 1),
            Map.entry("document", 1),
            Map.entry("statistics", 2),
            Map.entry("trait", 2),
            Map.entry("linkage", 3),
            Map.entry("model", 4),
            Map.entry("expression", 5),
            Map.entry("patch", 5),
            Map.entry("vocabulary", 6),
            Map.entry("caution", 6),
            Map.entry("pedigree", 7),
            Map.entry("explanation", 8),
            Map.entry("cross", 9),
            Map.entry("inference", 10),
            Map.entry("simulation", 11),
            Map.entry("estimation", 11),
            Map.entry("hypothesis", 12),
            Map.entry("comparison", 13),
            Map.entry("planning", 14),
            Map.entry("exercise", 15),
            Map.entry("answer", 16),
            Map.entry("render", 17),
            Map.entry("json", 18),
            Map.entry("table", 18),
            Map.entry("spi", 19));

    private FloorRule() {}

    static ArchRule usesLowerFloorsOnly(String root, Map<String, Integer> floors) {
        return classes()
                .that()
                .resideInAPackage(root + "..")
                .should(new ArchCondition<JavaClass>("use lower floors only") {
                    @Override
                    public void check(JavaClass item, ConditionEvents events) {
                        String own = block(root, item.getPackageName()).orElse("");
                        Integer floor = floors.get(own);
                        if (floor == null) {
                            events.add(SimpleConditionEvent.violated(
                                    item, item.getName() + " is in package '" + own + "', which has no floor"));
                            return;
                        }
                        for (Dependency dependency : item.getDirectDependenciesFromSelf()) {
                            block(
                                            root,
                                            dependency
                                                    .getTargetClass()
                                                    .getBaseComponentType()
                                                    .getPackageName())
                                    .filter(target -> !target.equals(own))
                                    .filter(target -> floors.getOrDefault(target, Integer.MAX_VALUE) >= floor)
                                    .ifPresent(target -> events.add(SimpleConditionEvent.violated(
                                            item,
                                            own + " (" + floor + ") uses " + target + " (" + floors.get(target) + "): "
                                                    + dependency.getDescription())));
                        }
                    }
                });
    }

    /** The first name of a package below the root; empty outside the root, and for the root itself. */
    private static Optional<String> block(String root, String packageName) {
        if (!packageName.startsWith(root + ".")) {
            return Optional.empty();
        }
        String below = packageName.substring(root.length() + 1);
        int dot = below.indexOf('.');
        return Optional.of(dot < 0 ? below : below.substring(0, dot));
    }
}
