import { useCombobox } from 'downshift'

/** A field under which what is found is chosen: the first stands ready for Enter, and leaving the field chooses nothing. `text` is what is typed. */
export function useFindBox<Option>({
  options,
  text,
  onText,
  onTake,
}: {
  options: Option[]
  text: string
  onText: (text: string) => void
  onTake: (option: Option) => void
}) {
  return useCombobox<Option>({
    items: options,
    inputValue: text,
    selectedItem: null,
    itemToString: () => '',
    defaultHighlightedIndex: 0,
    // What is typed is taken where it is typed: by way of this call, which comes after the letters, fast ones were lost.
    onInputValueChange: ({ inputValue, type }) => {
      if (type === useCombobox.stateChangeTypes.InputKeyDownEscape) onText(inputValue)
    },
    onSelectedItemChange: ({ selectedItem, type }) => {
      if (selectedItem && type !== useCombobox.stateChangeTypes.InputBlur) onTake(selectedItem)
    },
  })
}
