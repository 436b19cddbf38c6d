// The words of the catalogue that a script says; WORDS has them by name, "mark" is the decimal mark.

const say = (name, values = {}) => WORDS[name].replace(/\{ \$([a-z]+) \}/g, (_, each) => values[each]);
const marked = (number) => number.replace(".", WORDS.mark);
