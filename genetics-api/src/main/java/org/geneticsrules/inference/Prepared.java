package org.geneticsrules.inference;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.trait.Confusions;

/**
 * What questions about pedigrees under one model share: what looks are evidence of, and how units of loci are handed down. Worked out when
 * first needed.
 *
 * <p>Thread-safe.
 */
final class Prepared {

    private final CompiledModel compiled;
    private final Map<Confusions, Records> records = new ConcurrentHashMap<>();
    private final Map<Manner, Groups.Rules> rules = new ConcurrentHashMap<>();

    private record Manner(boolean mutating, boolean weighed) {}

    Prepared(CompiledModel compiled) {
        this.compiled = compiled;
    }

    CompiledModel compiled() {
        return compiled;
    }

    /** What records are evidence of, if states are recorded as others so often. */
    Records records(Confusions confusions) {
        return records.computeIfAbsent(confusions, key -> new Records(compiled, key));
    }

    /**
     * How animals inherit.
     *
     * @param mutating whether alleles change
     * @param weighed whether founders are weighed by their populations, or all that can live are alike
     */
    Groups.Rules rules(boolean mutating, boolean weighed) {
        return rules.computeIfAbsent(
                new Manner(mutating, weighed),
                key -> new Groups.Rules(compiled.model(), key.mutating(), key.weighed()));
    }
}
