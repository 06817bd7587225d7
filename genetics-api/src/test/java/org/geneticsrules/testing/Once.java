package org.geneticsrules.testing;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * Marks the longest comparisons with the twins. They take no part of the JDK that another version might change, so the gate makes them on
 * one JDK only; a build by itself always makes them.
 */
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@org.junit.jupiter.api.Tag("once")
@net.jqwik.api.Tag("once")
public @interface Once {}
