package org.geneticsrules.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaCodeUnit;
import com.tngtech.archunit.core.domain.JavaMember;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.domain.JavaType;
import com.tngtech.archunit.core.domain.JavaTypeVariable;
import com.tngtech.archunit.core.domain.properties.HasModifiers;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.util.Set;
import java.util.stream.Stream;

/** What a caller can see of a public type is made of java.base and of the library's own types, so no dependency leaks out. */
final class SignatureRule {
    private static final Set<String> JAVA_BASE = Object.class.getModule().getPackages();

    private SignatureRule() {}

    static ArchRule publicSignaturesUseOwnTypesOnly(String root) {
        return classes()
                .that()
                .resideInAPackage(root + "..")
                .should(new ArchCondition<JavaClass>("show only java.base and own types") {
                    @Override
                    public void check(JavaClass item, ConditionEvents events) {
                        if (!reachable(item)) {
                            return;
                        }
                        report(item.getName(), typesOfDeclaration(item), item, events);
                        for (JavaMember member : item.getMembers()) {
                            if (visible(member)) {
                                report(member.getFullName(), typesOfMember(member), item, events);
                            }
                        }
                    }
                });
    }

    private static void report(String where, Stream<JavaType> types, JavaClass item, ConditionEvents events) {
        types.flatMap(type -> type.getAllInvolvedRawTypes().stream())
                .map(JavaClass::getBaseComponentType)
                .filter(SignatureRule::foreign)
                .distinct()
                .forEach(type -> events.add(SimpleConditionEvent.violated(item, where + " shows " + type.getName())));
    }

    private static Stream<JavaType> typesOfDeclaration(JavaClass item) {
        return Stream.of(
                        item.getSuperclass().stream(),
                        item.getInterfaces().stream(),
                        bounds(item.getTypeParameters().stream()))
                .flatMap(types -> types);
    }

    private static Stream<JavaType> typesOfMember(JavaMember member) {
        if (member instanceof JavaCodeUnit code) {
            return Stream.of(
                            Stream.of(code.getReturnType()),
                            code.getParameterTypes().stream(),
                            code.getExceptionTypes().stream(),
                            bounds(code.getTypeParameters().stream()))
                    .flatMap(types -> types);
        }
        return member.getAllInvolvedRawTypes().stream().map(type -> type);
    }

    private static Stream<JavaType> bounds(Stream<? extends JavaTypeVariable<?>> variables) {
        return variables.flatMap(variable -> variable.getUpperBounds().stream());
    }

    /** A nested type can be seen only if the types around it can. */
    private static boolean reachable(JavaClass item) {
        return visible(item)
                && item.getEnclosingClass().map(SignatureRule::reachable).orElse(true);
    }

    private static boolean visible(HasModifiers item) {
        return item.getModifiers().contains(JavaModifier.PUBLIC)
                || item.getModifiers().contains(JavaModifier.PROTECTED);
    }

    private static boolean foreign(JavaClass type) {
        return !type.isPrimitive()
                && !JAVA_BASE.contains(type.getPackageName())
                && !type.getPackageName().startsWith(Compiled.ROOT + ".");
    }
}
