package org.geneticsrules.estimation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;

/** The sets of relatives of a pedigree, each as a pedigree of its own. */
final class Kindreds {

    private final Map<String, String> leader = new LinkedHashMap<>();

    private Kindreds() {}

    /** By the first animal of each set, in the order of the pedigree. */
    static Map<String, Pedigree> of(Pedigree pedigree) {
        Kindreds sets = new Kindreds();
        pedigree.individuals().keySet().forEach(id -> sets.leader.put(id, id));
        Map<String, PedigreeBuilder> builders = new LinkedHashMap<>();
        for (Litter litter : pedigree.litters().values()) {
            List<String> members = members(litter);
            members.forEach(id -> sets.join(members.get(0), id));
        }
        pedigree.individuals()
                .forEach((id, animal) -> builders.computeIfAbsent(
                                sets.find(id),
                                first -> Pedigree.builder(
                                        pedigree.id() + " " + (builders.size() + 1), pedigree.version()))
                        .add(animal));
        for (Litter litter : pedigree.litters().values()) {
            members(litter).stream()
                    .findFirst()
                    .map(first -> builders.get(sets.find(first)))
                    .ifPresent(builder -> builder.add(litter));
        }
        Map<String, Pedigree> found = new LinkedHashMap<>();
        builders.forEach((first, builder) -> found.put(first, builder.build()));
        return found;
    }

    private static List<String> members(Litter litter) {
        List<String> members = new ArrayList<>(litter.kits());
        litter.dam().ifPresent(members::add);
        members.addAll(litter.sires().males());
        litter.fosterDam().ifPresent(members::add);
        return members;
    }

    private String find(String id) {
        String at = id;
        String above = leader.getOrDefault(at, at);
        while (!above.equals(at)) {
            at = above;
            above = leader.getOrDefault(at, at);
        }
        return at;
    }

    /** The animal that comes first in the pedigree leads. */
    private void join(String one, String other) {
        String a = find(one);
        String b = find(other);
        for (String id : leader.keySet()) {
            if (id.equals(a) || id.equals(b)) {
                leader.put(id.equals(a) ? b : a, id);
                return;
            }
        }
    }
}
