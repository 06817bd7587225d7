package org.geneticsrules.testing;

import net.jqwik.api.AfterFailureMode;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.lifecycle.AroundPropertyHook;
import net.jqwik.api.lifecycle.PropagationMode;
import net.jqwik.api.lifecycle.PropertyExecutionResult;
import net.jqwik.api.lifecycle.PropertyExecutor;
import net.jqwik.api.lifecycle.PropertyLifecycleContext;

/**
 * Bounds the tries of every property if the system property {@code mutation.tries} is set, as the profile
 * {@code mutation} does: there each law is run once per change that it might notice. Each law then has a seed of its
 * own, so that the figures are the same every time, and a failure is not made smaller. Ordinary builds are not touched.
 */
public final class FewerTries implements AroundPropertyHook {

    /** Made by jqwik. */
    public FewerTries() {}

    @Override
    public PropertyExecutionResult aroundProperty(PropertyLifecycleContext context, PropertyExecutor property)
            throws Throwable {
        Integer most = Integer.getInteger("mutation.tries");
        if (most != null) {
            int tries = context.attributes().tries().orElse(most);
            context.attributes().setTries(Math.min(tries, most));
            context.attributes().setShrinking(ShrinkingMode.OFF);
            context.attributes().setSeed("" + context.label().hashCode());
            context.attributes().setEdgeCases(EdgeCasesMode.NONE);
            context.attributes().setAfterFailure(AfterFailureMode.RANDOM_SEED);
        }
        return property.execute();
    }

    @Override
    public int aroundPropertyProximity() {
        return -100;
    }

    @Override
    public PropagationMode propagateTo() {
        return PropagationMode.ALL_DESCENDANTS;
    }
}
